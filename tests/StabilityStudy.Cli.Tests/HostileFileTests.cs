using System.Buffers.Binary;
using System.Diagnostics;
using System.IO.Compression;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Cli.Tests;

/// <summary>Files that are made to exhaust the program, are no files, or lead elsewhere: words and an exit code, and nothing is written where it does not belong.</summary>
public sealed class HostileFileTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    public static TheoryData<string, string, string, int> Contents =>
        new()
        {
            { "protocol.toml", "x = ", "[", 200_000 },
            { "protocol.toml", "x = ", "{a=", 100_000 },
            { "protocol.toml", "x", ".a", 200_000 },
            { "protocol.toml", "[x", ".a", 200_000 },
            { "protocol.toml", "x = 1\n", "\0", 1_000_000 },
            { "protocol.toml", "", "= =\n", 200_000 },
            { "protocol.toml", "k = 1\n", "k = 1\n", 100_000 },
            { "study.toml", "x = ", "[", 200_000 },
            { "protocol.lock", "x = ", "[", 200_000 },
            { "results.csv", "specimen,tube", ",c", 1_000_000 },
            { "results.csv", "specimen,tube\n", ",", 10_000_000 },
            { "results.csv", "specimen,tube\n", "\n", StudyLimits.TableLines + 1 },
            { "results.csv", "specimen,tube\n\"", "a\n", 5_000_000 },
        };

    [Theory]
    [MemberData(nameof(Contents))]
    public async Task A_study_file_that_would_exhaust_the_program_is_a_query(
        string file,
        string begin,
        string again,
        int times
    )
    {
        using var copy = StudyCopy.Create();
        File.WriteAllText(
            Path.Combine(copy.Study, file),
            new StringBuilder(begin).Insert(begin.Length, again, times).Append('\n').ToString()
        );
        var before = Process.GetCurrentProcess().TotalProcessorTime;

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains($"STOP  {file}", run.Out, Comparison);
        Assert.Equal("next: answer what is marked STOP, and run check again", run.Error.TrimEnd());
        Assert.True(
            Process.GetCurrentProcess().TotalProcessorTime - before < TimeSpan.FromSeconds(30)
        );
    }

    [Fact]
    public async Task Many_different_keys_take_no_time_that_grows_with_their_square()
    {
        using var copy = StudyCopy.Create();
        File.AppendAllText(
            Path.Combine(copy.Study, "study.toml"),
            "\n[zz]\n" + string.Concat(Enumerable.Range(0, 80_000).Select(i => $"k{i}=1\n"))
        );

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
    }

    [Theory]
    [InlineData("protocol.toml", "1 MiB")]
    [InlineData("protocol.lock", "1 MiB")]
    [InlineData("results.csv", "256 MiB")]
    [InlineData("record.jsonl", "16 MiB")]
    public async Task A_file_of_gigabytes_is_not_read(string file, string bound)
    {
        using var copy = StudyCopy.Create();
        using (var stream = File.Open(Path.Combine(copy.Study, file), FileMode.OpenOrCreate))
        {
            stream.SetLength(5L << 30);
        }

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains($"{file} is larger than {bound}", run.Error, Comparison);
    }

    [Fact]
    public async Task Files_that_are_too_large_together_are_not_read()
    {
        using var copy = StudyCopy.Create();
        foreach (var name in (string[])["a.csv", "b.csv"])
        {
            using var stream = File.Create(Path.Combine(copy.Study, name));
            stream.SetLength((StudyLimits.TableBytes / 2) + 1);
        }

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("together larger than 256 MiB", run.Error, Comparison);
    }

    [Theory]
    [InlineData("verify FILE", "128 MiB")]
    [InlineData("verify REPORT --trust FILE", "1 MiB")]
    [InlineData("verify REPORT --revoked FILE", "1 MiB")]
    [InlineData("sign FILE --role author --key REPORT", "128 MiB")]
    [InlineData("sign REPORT --role author --key FILE", "1 MiB")]
    public async Task A_report_or_key_of_gigabytes_is_not_read(string arguments, string bound)
    {
        using var copy = StudyCopy.Create();
        using (var stream = File.Create(copy.At("large")))
        {
            stream.SetLength(5L << 30);
        }

        var run = await OfFile(copy, arguments, copy.At("large"));

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains($"larger than {bound}", run.Error, Comparison);
    }

    private static Task<Run> OfFile(StudyCopy copy, string arguments, string file)
    {
        File.WriteAllText(copy.At("report.pdf"), "%PDF-1.7\n");
        return Run.Of([
            .. arguments
                .Split(' ')
                .Select(argument =>
                    argument switch
                    {
                        "FILE" => file,
                        "REPORT" => copy.At("report.pdf"),
                        "STUDY" => copy.Study,
                        _ => argument,
                    }
                ),
        ]);
    }

    public static TheoryData<string, string> NoFiles
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var kind in (string[])["pipe", "socket", "device", "folder"])
            {
                foreach (
                    var arguments in (string[])
                        [
                            "verify FILE",
                            "verify REPORT --trust FILE",
                            "verify REPORT --revoked FILE",
                            "sign FILE --role author --key REPORT",
                            "sign REPORT --role author --key FILE",
                            "sign REPORT --role author --key REPORT --certificate FILE",
                            "lock STUDY --by A --key FILE",
                        ]
                )
                {
                    if (
                        kind != "folder"
                        || !arguments.Contains("--trust", Comparison)
                            && !arguments.Contains("--revoked", Comparison)
                    )
                    {
                        data.Add(kind, arguments);
                    }
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(NoFiles))]
    public async Task What_is_no_file_is_said_to_be_none(string kind, string arguments)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no such files in its folders.");
        using var copy = StudyCopy.Create();
        using var socket = Make(kind, copy.At("it"));

        var run = await OfFile(copy, arguments, kind == "device" ? "/dev/zero" : copy.At("it"));

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Matches("is empty, or is no file but a pipe|is a folder", run.Error);
    }

    [Theory]
    [InlineData("pipe", "results.csv")]
    [InlineData("pipe", "protocol.toml")]
    [InlineData("pipe", "record.jsonl")]
    [InlineData("socket", "results.csv")]
    [InlineData("socket", "protocol.toml")]
    [InlineData("folder", "results.csv")]
    [InlineData("folder", "protocol.toml")]
    public async Task A_study_file_that_is_no_file_stops_nobody_for_ever(string kind, string file)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no such files in its folders.");
        using var copy = StudyCopy.Create();
        var path = Path.Combine(copy.Study, file);
        File.Delete(path);
        using var socket = Make(kind, path);

        var run = await Run.Of("report", copy.Study);

        Assert.Equal(file == "record.jsonl" ? ExitCode.WrongUsage : ExitCode.StopQueries, run.Code);
        Assert.Contains(file, run.Out + run.Error, Comparison);
        Assert.False(Directory.Exists(copy.At("study", "out")));
    }

    private static Socket? Make(string kind, string path)
    {
        switch (kind)
        {
            case "pipe":
                using (var made = Process.Start("mkfifo", [path]))
                {
                    made.WaitForExit();
                }

                return null;
            case "socket":
                var socket = new Socket(
                    AddressFamily.Unix,
                    SocketType.Stream,
                    ProtocolType.Unspecified
                );
                socket.Bind(new UnixDomainSocketEndPoint(path));
                return socket;
            case "folder":
                Directory.CreateDirectory(path);
                return null;
            default:
                return null;
        }
    }

    public static TheoryData<string> RecordLines =>
        [
            "{",
            "null",
            "[]",
            "5",
            "{\"number\":1e999,\"previous\":\"\",\"outputs\":{}}",
            new string('[', 100_000),
            "{\"number\":1,\"previous\":\"\",\"outputs\":{}}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":{},\"action\":5,\"at\":\"2026-01-01T00:00:00+00:00\"}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":[1],\"action\":\"report\",\"at\":\"2026-01-01T00:00:00+00:00\"}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":{\"a\":5},\"action\":\"report\",\"at\":\"2026-01-01T00:00:00+00:00\"}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{\"a\":\"1\",\"a\":\"2\"},\"inputs\":{},\"action\":\"report\",\"at\":\"2026-01-01T00:00:00+00:00\"}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":{},\"action\":\"sign\",\"at\":5}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":{},\"action\":\"sign\",\"at\":null}",
            "{\"number\":1,\"previous\":\"\",\"outputs\":{},\"inputs\":{},\"action\":\"\\ud800\",\"at\":\"2026-01-01T00:00:00+00:00\"}",
            "{\"number\":99999999999999999999,\"previous\":\"\",\"look\":7}",
        ];

    [Theory]
    [MemberData(nameof(RecordLines))]
    public async Task A_line_of_the_record_that_somebody_wrote_is_a_query(string line)
    {
        using var copy = StudyCopy.Create();
        File.WriteAllText(Path.Combine(copy.Study, "record.jsonl"), line + "\n");

        var check = await Run.Of("check", copy.Study);
        var analyze = await Run.Of("analyze", copy.Study);

        Assert.Equal(ExitCode.Done, check.Code);
        Assert.Contains("record-chain-broken", check.Out, Comparison);
        Assert.Equal(ExitCode.Done, analyze.Code);
    }

    [Fact]
    public async Task A_second_line_is_read_with_the_same_doubt()
    {
        using var copy = StudyCopy.Create();
        const string first =
            "{\"number\":1,\"previous\":\"\",\"outputs\":{\"r\":\"x\"},\"inputs\":{\"a\":\"b\"},\"action\":\"report\",\"at\":\"2026-01-01T00:00:00+00:00\"}";
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(first)));
        File.WriteAllText(
            Path.Combine(copy.Study, "record.jsonl"),
            $"{first}\n{{\"number\":2,\"previous\":\"{hash}\",\"outputs\":{{}},\"inputs\":{{\"r\":\"x\"}},\"action\":\"sign\",\"at\":[]}}\n"
        );

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("record-chain-broken", run.Out, Comparison);
    }

    [Fact]
    public async Task A_record_of_more_lines_than_any_is_not_read()
    {
        using var copy = StudyCopy.Create();
        File.WriteAllText(
            Path.Combine(copy.Study, "record.jsonl"),
            new StringBuilder().Insert(0, "{}\n", StudyLimits.RecordLines + 1).ToString()
        );

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("more than 20000 lines", run.Error, Comparison);
    }

    public static TheoryData<string, string> Bombs =>
        new()
        {
            { "%", "a" },
            { "", "%\n" },
            { "[", "[]" },
            { "[", "0 " },
            { "[", ".1 " },
            { "[", "()" },
            { "[", "<</A 1>>" },
            { "[", "1 0 R " },
            { "1", " " },
            { "(", "a" },
        };

    [Theory]
    [MemberData(nameof(Bombs))]
    public async Task A_PDF_that_grows_when_unpacked_is_refused(string begin, string again)
    {
        using var copy = StudyCopy.Create();
        var header = "5 0 ";
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            zlib.Write(Encoding.ASCII.GetBytes(header + begin));
            var piece = Encoding.ASCII.GetBytes(
                new StringBuilder().Insert(0, again, 60_000 / again.Length).ToString()
            );
            for (var i = 0; i < 1_000; i++)
            {
                zlib.Write(piece);
            }
        }

        File.WriteAllBytes(copy.At("bomb.pdf"), Pdf(header.Length, packed.ToArray()));

        var run = await Run.Of("verify", copy.At("bomb.pdf"));

        Assert.Equal(ExitCode.VerificationFailed, run.Code);
        Assert.Matches(
            begin == "["
                ? @"more objects\s+than the bounds allow"
                : @"cannot be read|carries no\s+analysis.json",
            run.Out
        );
    }

    /// <summary>A file with one object stream.</summary>
    private static byte[] Pdf(int first, byte[] packed)
    {
        using var file = new MemoryStream();
        var places = new Dictionary<int, int>();
        Object(1, "<</Type/Catalog/Pages 2 0 R>>", null);
        Object(2, "<</Type/Pages/Kids[]/Count 0>>", null);
        Object(
            4,
            $"<</Type/ObjStm/N 1/First {first}/Filter/FlateDecode/Length {packed.Length}>>",
            packed
        );
        var at = (int)file.Position;
        byte[] entries =
        [
            .. Entry(0, 0, 0),
            .. Entry(1, places[1], 0),
            .. Entry(1, places[2], 0),
            .. Entry(0, 0, 0),
            .. Entry(1, places[4], 0),
            .. Entry(2, 4, 0),
            .. Entry(1, at, 0),
        ];
        Object(6, $"<</Type/XRef/W[1 4 2]/Size 7/Root 1 0 R/Length {entries.Length}>>", entries);
        file.Write(Encoding.ASCII.GetBytes($"startxref\n{at}\n%%EOF\n"));
        return file.ToArray();

        void Object(int number, string dictionary, byte[]? stream)
        {
            if (number == 1)
            {
                file.Write("%PDF-1.7\n"u8);
            }

            places[number] = (int)file.Position;
            file.Write(Encoding.ASCII.GetBytes($"{number} 0 obj\n{dictionary}"));
            if (stream is not null)
            {
                file.Write("\nstream\n"u8);
                file.Write(stream);
                file.Write("\nendstream"u8);
            }

            file.Write("\nendobj\n"u8);
        }

        static byte[] Entry(int kind, int place, int detail) =>
            [
                (byte)kind,
                .. BitConverter.GetBytes(BinaryPrimitives.ReverseEndianness(place)),
                .. BitConverter.GetBytes(BinaryPrimitives.ReverseEndianness((short)detail)),
            ];
    }

    [Theory]
    [InlineData("results.csv")]
    [InlineData("protocol.toml")]
    [InlineData("record.jsonl")]
    [InlineData("locked")]
    public async Task A_link_out_of_the_study_folder_is_not_followed(string name)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making links needs rights there.");
        using var copy = StudyCopy.CreateLocked();
        var path = Path.Combine(copy.Study, name);
        if (name == "locked")
        {
            Directory.CreateDirectory(copy.At("elsewhere"));
            File.Copy(Path.Combine(copy.Study, "protocol.toml"), copy.At("elsewhere", "1.toml"));
            Directory.CreateSymbolicLink(path, copy.At("elsewhere"));
        }
        else
        {
            if (File.Exists(path))
            {
                File.Move(path, copy.At("elsewhere"));
            }
            else
            {
                File.WriteAllText(copy.At("elsewhere"), "");
            }

            File.CreateSymbolicLink(path, "../elsewhere");
        }

        var run = await Run.Of("report", copy.Study);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(
            $"{path} is a link to {copy.At("elsewhere")}, which lies outside",
            run.Error,
            Comparison
        );
        Assert.False(Directory.Exists(copy.At("study", "out")));
    }

    [Fact]
    public async Task A_link_inside_the_study_folder_is_read()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making links needs rights there.");
        using var copy = StudyCopy.Create();
        Directory.CreateDirectory(copy.At("study", "raw"));
        File.Move(copy.At("study", "results.csv"), copy.At("study", "raw", "results.csv"));
        File.CreateSymbolicLink(copy.At("study", "results.csv"), "raw/results.csv");

        Assert.Equal(ExitCode.Done, (await Run.Of("check", copy.Study)).Code);
    }

    [Theory]
    [InlineData("out", true)]
    [InlineData("out/report.txt", false)]
    [InlineData("out/analysis.json", false)]
    public async Task Nothing_is_written_through_a_link(string name, bool isFolder)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making links needs rights there.");
        using var copy = StudyCopy.Create();
        var path = Path.Combine(copy.Study, name);
        if (isFolder)
        {
            Directory.CreateDirectory(copy.At("elsewhere"));
            Directory.CreateSymbolicLink(path, copy.At("elsewhere"));
        }
        else
        {
            Directory.CreateDirectory(copy.At("study", "out"));
            File.WriteAllText(copy.At("elsewhere"), "kept");
            File.CreateSymbolicLink(path, copy.At("elsewhere"));
        }

        var run = await Run.Of("report", copy.Study, "--format", "text");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("is a link to", run.Error, Comparison);
        if (isFolder)
        {
            Assert.Empty(Directory.GetFiles(copy.At("elsewhere")));
        }
        else
        {
            Assert.Equal("kept", File.ReadAllText(copy.At("elsewhere")));
        }

        Assert.DoesNotContain(copy.Files(), file => file.EndsWith(".part", Comparison));
    }

    [Fact]
    public async Task A_report_does_not_go_into_the_folder_of_another_study()
    {
        using var copy = StudyCopy.Create();
        using var other = StudyCopy.Create();
        foreach (
            var target in (string[])
                [other.At("study", "out", "report.txt"), other.At("study", "report.txt")]
        )
        {
            var run = await Run.Of("report", copy.Study, "-o", target);

            Assert.Equal(ExitCode.WrongUsage, run.Code);
            Assert.Contains("another study", run.Error, Comparison);
        }
    }

    [Fact]
    public async Task Two_reports_in_one_folder_keep_their_own_analysis()
    {
        using var copy = StudyCopy.Create();
        File.WriteAllText(copy.At("analysis.json"), "of another");

        var run = await Run.Of("report", copy.Study, "-o", copy.At("one.txt"));

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("of another", File.ReadAllText(copy.At("analysis.json")));
        Assert.True(File.Exists(copy.At("one.analysis.json")));
    }

    [Fact]
    public async Task A_file_that_is_written_again_keeps_its_rights()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights are kept otherwise there.");
        using var copy = StudyCopy.Create();
        var report = copy.At("study", "out", "report.txt");
        await Run.Of("report", copy.Study, "--format", "text");
        var shared =
            UnixFileMode.UserRead
            | UnixFileMode.UserWrite
            | UnixFileMode.GroupRead
            | UnixFileMode.GroupWrite;
#pragma warning disable CA1416 // Skipped above.
        File.SetUnixFileMode(report, shared);

        await Run.Of("report", copy.Study, "--format", "text");

        Assert.Equal(shared, File.GetUnixFileMode(report));
#pragma warning restore CA1416
    }

    [Theory]
    [InlineData("=HYPERLINK(1)")]
    [InlineData("@SUM(1)")]
    [InlineData("+A1")]
    [InlineData("-A1")]
    public async Task A_code_that_a_spreadsheet_would_run_is_a_query(string code)
    {
        using var copy = StudyCopy.Create();
        var lines = File.ReadAllLines(Path.Combine(copy.Study, "specimens.csv"));
        var specimen = lines[1].Split(',')[0];
        foreach (var name in (string[])["specimens.csv", "results.csv"])
        {
            copy.Edit(name, specimen + ",", code + ",");
        }

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("[looks-like-formula]", run.Out, Comparison);
        Assert.Contains(
            "begin it with a letter or a digit",
            run.Out.Replace("\n    ", " ", Comparison),
            StringComparison.OrdinalIgnoreCase
        );
    }
}

using System.IO.Compression;
using System.Text;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Files.Tests;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Files.Tests.OwnTables;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>
/// What study.toml does not map reaches nothing that the program writes: a mark that stands in columns, cells, sheets and segments of a delivered file of which nothing is read is looked
/// for in every answer, message, file of the study folder, output and temporary file, also inside the compressed streams of a report.
/// </summary>
[Trait("lane", "slow")]
public sealed class UnmappedTextTests
{
    private const string Mark = ResultMessages.Mark;

    private static readonly string[] s_header =
    [
        "Sample",
        "Test",
        "Result",
        "Unit",
        "Tested",
        "Patient name",
        "Date of birth",
        "MRN",
        "Kommentar",
    ];

    private const string Read = """

        [read.results]
        file = "NAME"
        tube_pattern = "{specimen}-{tube}"
        MORE
        [read.results.columns]
        tube = "Sample"
        analyte = "Test"
        result = "Result"
        unit = "Unit"
        tested_at = "Tested"

        """;

    private const string OfMessages = """

        [read.results]
        file = "NAME"
        tube_pattern = "{specimen}-{tube}"
        [read.results.columns]
        tube = "specimen_id"
        analyte = "test_code"
        [read.results.time_point_of_tube]
        A = "baseline"
        B = "6 h"
        C = "8 h"

        """;

    private const string TimePoints =
        "time_point_of_tube = { A = \"baseline\", B = \"6 h\", C = \"8 h\" }";

    [Theory]
    [InlineData("export.csv")]
    [InlineData("broken.csv")]
    [InlineData("export.xlsx")]
    [InlineData("results.hl7")]
    public async Task It_reaches_nothing_that_is_written(string name)
    {
        using var folder = StudyCopy.CreateOf(".");
        var isSound = name != "broken.csv";
        await Write(folder, name, isDescribed: true);
        var before = Inputs(folder);
        await Require(folder, before, isSound ? 0 : 1, "check", folder.Study);
        await Require(folder, before, isSound ? 0 : 1, "analyze", folder.Study, "--interim");
        foreach (var (format, end) in new[] { ("pdf", "pdf"), ("html", "html"), ("text", "txt") })
        {
            await Require(
                folder,
                before,
                isSound ? 0 : 1,
                "report",
                folder.Study,
                "--interim",
                "--format",
                format,
                "-o",
                folder.At("out", $"report.{end}")
            );
        }

        Assert.Equal(isSound, File.Exists(folder.At("out", "report.pdf")));
        await Write(folder, name, isDescribed: false);
        await Require(folder, Inputs(folder), null, "check", folder.Study);
        await Require(folder, Inputs(folder), null, "check", folder.Study, "--suggest");
        await Require(folder, Inputs(folder), null, "check", folder.Study, "--suggest", "--write");
        Assert.Contains(
            $"file = \"{name}\"",
            await File.ReadAllTextAsync(
                folder.At("study", "study.toml"),
                TestContext.Current.CancellationToken
            ),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_mark_is_found_where_it_stands()
    {
        using var compressed = new MemoryStream();
        using (var stream = new ZLibStream(compressed, CompressionLevel.Optimal, leaveOpen: true))
        {
            stream.Write(Encoding.BigEndianUnicode.GetBytes($"a {Mark} b"));
        }

        Assert.True(Holds(Encoding.UTF8.GetBytes($"a {Mark} b")));
        Assert.True(
            Holds([.. "1 0 obj <<>> stream\n"u8, .. compressed.ToArray(), .. "\nendstream"u8])
        );
        Assert.False(Holds("stream\nnothing\nendstream"u8.ToArray()));
    }

    private static async Task Require(
        StudyCopy folder,
        HashSet<string> inputs,
        int? expected,
        params string[] arguments
    )
    {
        var temporary = Directory.CreateDirectory(folder.At("temporary")).FullName;
        var answer = await BuiltProgram.Run(
            start => start.Environment["TMPDIR"] = temporary,
            arguments
        );
        if (expected is { } code)
        {
            Assert.True(answer.ExitCode == code, $"{answer.ExitCode} {answer.Out}{answer.Error}");
        }

        RequireNone(Encoding.UTF8.GetBytes(answer.Out), string.Join(' ', arguments));
        RequireNone(Encoding.UTF8.GetBytes(answer.Error), string.Join(' ', arguments));
        foreach (
            var path in Directory
                .EnumerateFiles(folder.Root, "*", SearchOption.AllDirectories)
                .Where(path => !inputs.Contains(path))
        )
        {
            RequireNone(
                await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken),
                path
            );
        }
    }

    private static void RequireNone(byte[] bytes, string where) =>
        Assert.False(Holds(bytes), where);

    private static bool Holds(byte[] bytes)
    {
        if (IsIn(bytes))
        {
            return true;
        }

        var rest = bytes.AsSpan();
        while (rest.IndexOf("stream"u8) is >= 0 and var at)
        {
            rest = rest[(at + "stream"u8.Length)..].TrimStart("\r\n"u8);
            if (IsIn(Inflated(rest.ToArray())))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsIn(byte[] bytes) =>
        new[] { Mark, ResultMessages.Beside }.Any(mark =>
            new[] { Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode }.Any(encoding =>
                bytes.AsSpan().IndexOf(encoding.GetBytes(mark)) >= 0
            )
        );

    private static byte[] Inflated(byte[] bytes)
    {
        using var output = new MemoryStream();
        try
        {
            using var stream = new ZLibStream(new MemoryStream(bytes), CompressionMode.Decompress);
            stream.CopyTo(output);
        }
        catch (InvalidDataException)
        {
            // What is no stream holds nothing more than its bytes.
        }

        return output.ToArray();
    }

    private static HashSet<string> Inputs(StudyCopy folder) =>
        [
            .. Directory
                .EnumerateFiles(folder.Study)
                .Where(path => !path.EndsWith(".toml", StringComparison.Ordinal)),
        ];

    private static async Task Write(StudyCopy folder, string name, bool isDescribed)
    {
        var cancellation = TestContext.Current.CancellationToken;
        Directory.Delete(folder.Study, recursive: true);
        Directory.CreateDirectory(folder.Study);
        var read = (name.EndsWith(".hl7", StringComparison.Ordinal) ? OfMessages : Read)
            .Replace("NAME", name, StringComparison.Ordinal)
            .Replace(
                "MORE",
                TimePoints
                    + (
                        name.EndsWith(".csv", StringComparison.Ordinal)
                            ? "\nheader_line = 2\nfooter_lines = 1"
                            : "\nsheet = \"Export\""
                    ),
                StringComparison.Ordinal
            );
        await File.WriteAllTextAsync(
            folder.At("study", "study.toml"),
            DeliveredData.Facts(isDescribed ? read : ""),
            cancellation
        );
        await File.WriteAllTextAsync(
            folder.At("study", "protocol.toml"),
            DeliveredData.Protocol,
            cancellation
        );
        await File.WriteAllBytesAsync(
            folder.At("study", "specimens.csv"),
            DeliveredData.Plain.Files["specimens.csv"].ToArray(),
            cancellation
        );
        await File.WriteAllBytesAsync(folder.At("study", name), Delivered(name), cancellation);
    }

    private static byte[] Delivered(string name) =>
        name switch
        {
            "export.csv" => Encoding.UTF8.GetBytes(Csv("")),
            "broken.csv" => Encoding.UTF8.GetBytes(
                Csv($"{Mark};{Mark}\nN001-A;aPTT;\"{Mark} 31.4;s;2026-03-02T08:10;{Mark}\n")
            ),
            "export.xlsx" => Book(),
            _ => new ResultMessages(11).File(
                DeliveredData.Delivered.Select(test => new ResultMessages.Sent
                {
                    Tube = $"{test.Code}-{test.Tube}",
                    Code = "aPTT",
                    Result = test.Result,
                    Unit = "s",
                    Tested = new DateTimeOffset(test.Tested, TimeSpan.FromHours(1)),
                    Collected = new DateTimeOffset(test.Collected, TimeSpan.FromHours(1)),
                })
            ),
        };

    private static string[] Fields(DeliveredData.Test test) =>
        [
            $"{test.Code}-{test.Tube}",
            "aPTT",
            test.Result,
            "s",
            DeliveredData.Iso(test.Tested),
            $"{Mark}, Erika",
            $"1961-04-23 {Mark}",
            $"{Mark}7654321",
            $"called Dr. {Mark}",
        ];

    private static string Csv(string broken) =>
        $"Ordered by {Mark};;;;;;;;\n{string.Join(',', s_header)}\n"
        + string.Concat(
            DeliveredData.Delivered.Select(test =>
                string.Join(',', Fields(test).Select(field => $"\"{field}\"")) + "\n"
            )
        )
        + broken
        + $"printed for {Mark}\n";

    private static byte[] Book() =>
        new WorkbookBytes()
            .Sheet(
                "Export",
                [
                    Row.Of(s_header),
                    .. DeliveredData.Delivered.Select(test =>
                        Row.Of(Fields(test)) with
                        {
                            Cells =
                            [
                                .. Fields(test)
                                    .Select(
                                        (field, i) =>
                                            i == 2 && char.IsAsciiDigit(field[0])
                                                ? Cell.Number(field, "0.0")
                                                : Cell.Text(field)
                                    ),
                            ],
                        }
                    ),
                ]
            )
            .Sheet("Patients", [Row.Of("Name", "Result"), Row.Of(Mark, "31.4")])
            .Sheet("Hidden", [Row.Of("Name", "Result"), Row.Of(Mark, "31.4")], state: "hidden")
            .ToArray();
}

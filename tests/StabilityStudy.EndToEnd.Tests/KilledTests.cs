using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>
/// A program that is killed at any moment leaves the old file or the new one, never a broken one. The environment
/// variable KILLS sets how often each command is killed; a few times otherwise.
/// </summary>
[Trait("lane", "slow")]
public sealed class KilledTests
{
    private const int Seed = 20261125;

    private static readonly string[] s_inputs = ["protocol.toml", "study.toml", "pairs.csv"];

    private static int Kills => LongProof.Setting("KILLS", 2);

    [Fact]
    public async Task Report_leaves_the_old_or_the_new_file()
    {
        using var copy = StudyCopy.CreateOf(ExampleStudy.SmallFolder, s_inputs);
        var report = copy.At("study", "out", "report.pdf");
        await InProcess("report", copy.Study);
        var whole = await Bytes(report);
        File.Delete(report);

        await Killed(
            async () =>
            {
                // The bytes of a report are always the same, so old and new are one.
                Assert.Equal(whole, await Bytes(report));
                Assert.Empty(
                    StudyRecord.Check(await Bytes(copy.At("study", StudyRecord.Name)), null)
                );
            },
            "report",
            copy.Study
        );
    }

    [Fact]
    public async Task Lock_leaves_no_lock_or_a_whole_one()
    {
        using var copy = StudyCopy.CreateOf(ExampleStudy.SmallFolder, s_inputs);
        var path = copy.At("study", "protocol.lock");

        await Killed(
            async () =>
            {
                await InProcess("check", copy.Study);
                File.Delete(path);
                File.Delete(copy.At("study", StudyRecord.Name));
            },
            "lock",
            copy.Study,
            "--by",
            "LS1"
        );
    }

    [Fact]
    public async Task Start_leaves_no_folder_or_a_whole_one()
    {
        using var copy = StudyCopy.CreateOf(ExampleStudy.SmallFolder, s_inputs);
        var folder = copy.At("new");

        await Killed(
            async () =>
            {
                if (Directory.Exists(folder))
                {
                    var found = await Run.Of("check", folder);
                    Assert.Equal(ExitCode.Done, found.Code);
                    Assert.StartsWith("No data yet", found.Out, StringComparison.Ordinal);
                    Assert.Equal(5, Directory.EnumerateFiles(folder).Count());
                    Directory.Delete(folder, recursive: true);
                }
            },
            "start",
            folder,
            "--protocol",
            "aptt-whole-blood-room-temperature",
            "--facility",
            "Invented laboratory",
            "--time-zone",
            "none",
            "--person",
            "LS1=Lab Scientist One, lab scientist"
        );
    }

    [Fact]
    public async Task Sign_leaves_no_signature_or_a_whole_one()
    {
        using var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            [.. s_inputs, "protocol.lock"]
        );
        await InProcess("report", copy.Study);
        await InProcess("trial-certificate", copy.At("keys"), "--name", "A");
        var signed = copy.At("signed.pdf");

        await Killed(
            async () =>
            {
                if (File.Exists(signed))
                {
                    var found = await Run.Of("verify", signed);
                    Assert.Equal(ExitCode.VerificationIncomplete, found.Code);
                    File.Delete(signed);
                }
            },
            "sign",
            copy.At("study", "out", "report.pdf"),
            "--role",
            "author",
            "--key",
            copy.At("keys", "a.p12"),
            "--passphrase-file",
            copy.At("keys", "a.passphrase"),
            "-o",
            signed
        );
    }

    [Fact]
    public async Task Programs_at_the_same_time_lose_no_line_of_the_record()
    {
        using var copy = StudyCopy.CreateOf(ExampleStudy.SmallFolder, s_inputs);

        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(i =>
                    BuiltProgram.Run(
                        "report",
                        copy.Study,
                        "--format",
                        "text",
                        "-o",
                        copy.At($"at-once-{i}", "report.txt")
                    )
                )
        );

        Assert.All(answers, answer => Assert.Equal(0, answer.ExitCode));
        var record = await Bytes(copy.At("study", StudyRecord.Name));
        Assert.Empty(StudyRecord.Check(record, null));
        Assert.Equal(4, record.Count(letter => letter == (byte)'\n'));
    }

    private static async Task Killed(Func<Task> afterwards, params string[] arguments)
    {
        var whole = System.Diagnostics.Stopwatch.StartNew();
        await BuiltProgram.Done(arguments);
        var duration = whole.Elapsed;
        await afterwards();
        var random = new Random(Seed);
        for (var i = 0; i < Kills; i++)
        {
            using (var process = BuiltProgram.Start(_ => { }, arguments))
            {
                // Most of the moments near the end, where files are written. What is asked afterwards holds for every moment.
                var share = i % 2 == 0 ? random.NextDouble() : 0.8 + (0.4 * random.NextDouble());
                await Task.Delay(duration * share, TestContext.Current.CancellationToken);
                process.Kill();
                await BuiltProgram.Wait(process);
            }

            await afterwards();
        }
    }

    /// <summary>What is not killed needs no process of its own.</summary>
    private static async Task InProcess(params string[] arguments)
    {
        var run = await Run.Of(arguments);
        Assert.True(run.Code == ExitCode.Done, run.Error);
    }

    private static Task<byte[]> Bytes(string path) =>
        File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
}

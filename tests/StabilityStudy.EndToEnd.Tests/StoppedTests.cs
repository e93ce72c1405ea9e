using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

[Trait("lane", "slow")]
public sealed class StoppedTests
{
    [Theory]
    [InlineData("3x.1")]
    [InlineData("\"31,4\"")]
    public async Task A_broken_row_gives_code_1_and_its_file_line_and_column(string result)
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Results, ",33.2,s,", $",{result},s,");
        foreach (var command in new[] { "check", "report" })
        {
            var answer = await BuiltProgram.Run(command, copy.Study);

            Assert.Equal(1, answer.ExitCode);
            Assert.Contains(
                "STOP  results.csv line 3, column result",
                answer.Out,
                StringComparison.Ordinal
            );
            Assert.Contains("read: " + result.Trim('"'), answer.Out, StringComparison.Ordinal);
        }

        Assert.False(Directory.Exists(copy.At("study", "out")));
    }

    [Fact]
    public async Task Wrong_usage_gives_code_2()
    {
        var answer = await BuiltProgram.Run("report");

        Assert.Equal(2, answer.ExitCode);
        Assert.Equal("", answer.Out);
    }

    [Fact]
    public async Task A_narrower_limit_takes_the_support_of_8_hours_as_the_README_says()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Protocol, "\npercent = 7.5", "\npercent = 5");

        var answer = await Run.Of("analyze", copy.Study);

        Assert.Equal(ExitCode.Done, answer.Code);
        Assert.DoesNotContain("Supported to 6 h", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_interrupt_gives_code_130_and_no_file()
    {
        using var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            "pairs.csv"
        );
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "A");
        var passphrase = copy.At("keys", "pipe");
        await Shell("mkfifo \"$0\"", passphrase);
        using var process = BuiltProgram.Start(
            Interruptible,
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--key",
            copy.At("keys", "a.p12"),
            "--passphrase-file",
            passphrase
        );

        // Opening the pipe ends when the program has opened its other end; from then on it waits for the passphrase.
        await using var pipe = await InTime(Task.Run(() => OpenPipe(passphrase)));
        await Interrupt(process);
        var answer = await InTime(BuiltProgram.Wait(process));

        Assert.Equal(130, answer.ExitCode);
        Assert.DoesNotContain("study/protocol.lock", copy.Files());
    }

    [Theory]
    [InlineData("*.part")]
    [InlineData("out")]
    public async Task An_interrupt_while_files_are_written_leaves_both_or_none(string first)
    {
        using var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            "pairs.csv"
        );
        var written = new TaskCompletionSource();
        using var watcher = new FileSystemWatcher(copy.Study, first);
        watcher.Created += (_, _) => written.TrySetResult();
        watcher.EnableRaisingEvents = true;
        using var process = BuiltProgram.Start(Interruptible, "report", copy.Study);
        await InTime(written.Task);
        await Interrupt(process);

        var answer = await InTime(BuiltProgram.Wait(process));

        // Which of the two it is depends on the machine's speed; anything between them never happens.
        Assert.Contains(answer.ExitCode, new[] { 0, 130 });
        Assert.Equal(
            answer.ExitCode == 130 ? [] : ["study/out/analysis.json", "study/out/report.pdf"],
            copy.Files().Where(file => file.StartsWith("study/out", StringComparison.Ordinal))
        );
    }

    /// <summary>
    /// What a shell starts in the background ignores interrupts, and so does all that is started from there; the program
    /// keeps to that. These tests may run there, and their program must not.
    /// </summary>
    private static void Interruptible(System.Diagnostics.ProcessStartInfo start)
    {
        if (OperatingSystem.IsLinux())
        {
            start.ArgumentList.Insert(0, start.FileName);
            start.ArgumentList.Insert(0, "--default-signal=INT");
            start.FileName = "env";
        }
    }

    private static FileStream OpenPipe(string path) =>
        new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);

    /// <summary>A process that has ended by now is not interrupted.</summary>
    private static Task Interrupt(System.Diagnostics.Process process) =>
        Shell(FormattableString.Invariant($"kill -INT {process.Id} || true"), "");

    /// <summary>The shell has kill built in; as a program of its own it is not everywhere.</summary>
    private static async Task Shell(string command, string argument)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no interrupt signal to send.");
        var answer = await OutsideTool.Run("sh", "-c", command, argument);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }

    // Only a process that hangs takes as long.
    private static Task<T> InTime<T>(Task<T> task) =>
        task.WaitAsync(TimeSpan.FromMinutes(5), TestContext.Current.CancellationToken);

    private static Task InTime(Task task) =>
        task.WaitAsync(TimeSpan.FromMinutes(5), TestContext.Current.CancellationToken);
}

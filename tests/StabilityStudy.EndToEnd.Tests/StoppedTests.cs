using StabilityStudy.Cli.Tests;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

public sealed class StoppedTests(ReportedExample example)
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

        var answer = await BuiltProgram.Run("analyze", copy.Study);

        Assert.Equal(0, answer.ExitCode);
        Assert.DoesNotContain("Supported to 8 h", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_interrupt_gives_code_130_and_no_file()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no interrupt signal to send.");
        using var copy = StudyCopy.Create();
        using var process = BuiltProgram.Start(_ => { }, "report", copy.Study);
        // Long enough for the runtime to start, far too short for a report.
        await Task.Delay(350, TestContext.Current.CancellationToken);
        // The shell has kill built in; as a program of its own it is not everywhere.
        await OutsideTool.Run("sh", "-c", FormattableString.Invariant($"kill -INT {process.Id}"));

        var answer = await BuiltProgram.Wait(process);

        Assert.Equal(130, answer.ExitCode);
        Assert.DoesNotContain(
            copy.Files(),
            file => file.StartsWith("study/out", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task An_interrupt_late_in_the_work_leaves_both_files_or_none()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no interrupt signal to send.");
        foreach (var share in new[] { 0.6, 0.9 })
        {
            using var copy = StudyCopy.Create();
            using var process = BuiltProgram.Start(_ => { }, "report", copy.Study);
            await Task.Delay(example.Duration * share, TestContext.Current.CancellationToken);
            await OutsideTool.Run(
                "sh",
                "-c",
                FormattableString.Invariant($"kill -INT {process.Id}; true")
            );
            var answer = await BuiltProgram.Wait(process);

            // Which of the two it is depends on the machine's speed; anything between them never happens.
            Assert.Contains(answer.ExitCode, new[] { 0, 130 });
            Assert.Equal(
                answer.ExitCode == 130 ? [] : ["study/out/analysis.json", "study/out/report.pdf"],
                copy.Files().Where(file => file.StartsWith("study/out", StringComparison.Ordinal))
            );
        }
    }
}

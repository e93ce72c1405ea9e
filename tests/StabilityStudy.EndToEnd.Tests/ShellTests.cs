using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>Manual pages and completions, read by the programs that they are for.</summary>
[Trait("lane", "slow")]
public sealed class ShellTests
{
    [Fact]
    public async Task Every_manual_page_is_set_by_groff_without_a_warning()
    {
        using var copy = StudyCopy.CreateOf("");
        await BuiltProgram.Done("manual", copy.At("man1"));

        foreach (var page in Directory.GetFiles(copy.At("man1")))
        {
            var set = await OutsideTool.Run("groff", "-man", "-Tutf8", "-P-cbou", "-ww", page);
            Assert.Equal((0, ""), (set.ExitCode, set.Error));
            Assert.Contains("EXIT STATUS", set.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("che", "check")]
    [InlineData("protocols frozen-", "frozen-plasma-20 frozen-plasma-70")]
    [InlineData("report study --format t", "text")]
    public async Task Bash_completes_what_was_begun(string typed, string completed)
    {
        using var copy = StudyCopy.CreateOf("");
        var script = (await BuiltProgram.Run("completions", "bash")).Out;
        var words = typed.Split(' ');
        // The program answers under its own name, as it would when installed.
        var answers = await BuiltProgram.Run(
            string.Create(
                CultureInfo.InvariantCulture,
                $"[suggest:{"stability-study ".Length + typed.Length}]"
            ),
            "stability-study " + typed
        );
        await File.WriteAllTextAsync(
            copy.At("answers"),
            answers.Out,
            TestContext.Current.CancellationToken
        );
        await File.WriteAllTextAsync(
            copy.At("complete.sh"),
            $"""
            {script}
            stability-study() {"{"} cat '{copy.At("answers")}'; {"}"}
            COMP_LINE='stability-study {typed}' COMP_POINT=${"{"}#COMP_LINE{"}"}
            COMP_WORDS=(stability-study {typed}) COMP_CWORD={words.Length}
            _stability_study
            echo "${"{"}COMPREPLY[*]{"}"}"
            """,
            TestContext.Current.CancellationToken
        );

        var run = await OutsideTool.Run("bash", copy.At("complete.sh"));

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Equal(completed, run.Out.Trim());
    }
}

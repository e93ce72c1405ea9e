using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>Color on a real terminal, which only another program can give to a test.</summary>
[Trait("lane", "slow")]
public sealed class ColorTests
{
    private const string BoldYellow = "\e[1;33m";

    [Fact]
    public async Task A_terminal_gets_color() =>
        Assert.Contains(BoldYellow, await OnTerminal(""), StringComparison.Ordinal);

    [Fact]
    public async Task NO_COLOR_is_respected_on_a_terminal()
    {
        var shown = await OnTerminal("NO_COLOR=1");

        Assert.Contains("ATTENTION  results.csv", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("\e[1", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_gets_no_escape_character()
    {
        var answer = await BuiltProgram.Run("check", ExampleStudy.Folder);

        Assert.Contains("ATTENTION  results.csv", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\e', answer.Out + answer.Error);
    }

    [Fact]
    public async Task A_full_disk_behind_the_output_is_said_without_a_stack_trace()
    {
        Assert.SkipUnless(
            OperatingSystem.IsLinux(),
            "Only Linux has a device that is always full."
        );

        var answer = await OutsideTool.Run(
            "sh",
            "-c",
            $"{BuiltProgram.Command} check '{ExampleStudy.Folder}' > /dev/full"
        );

        Assert.Equal(2, answer.ExitCode);
        Assert.StartsWith("The output cannot be written", answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd().Split('\n'));
    }

    private static async Task<string> OnTerminal(string setting)
    {
        Assert.SkipUnless(
            OperatingSystem.IsLinux(),
            "The options of the program that makes a terminal are known for Linux only."
        );
        var answer = await OutsideTool.Run(
            "script",
            "-qec",
            $"env -u NO_COLOR TERM=xterm {setting} {BuiltProgram.Command} check '{ExampleStudy.Folder}'",
            "/dev/null"
        );
        Assert.Equal(0, answer.ExitCode);
        return answer.Out;
    }
}

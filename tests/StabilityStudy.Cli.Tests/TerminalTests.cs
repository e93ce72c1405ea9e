using StabilityStudy.Cli.Console;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

public sealed class TerminalTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public async Task Progress_is_told_on_the_error_output_when_a_person_watches()
    {
        using var copy = StudyCopy.Create();
        await using var output = new StringWriter();
        await using var error = new StringWriter();
        var terminal = new Terminal(
            output,
            error,
            ShowsProgress: true,
            UsesColor: false,
            Terminal.DefaultWidth
        );

        var code = await Application.RunAsync(
            ["report", copy.Study, "--format", "text"],
            terminal,
            TestContext.Current.CancellationToken
        );

        Assert.Equal(ExitCode.Done, code);
        Assert.Equal(
            ["Reading and analyzing " + copy.Study + " …", "Drawing the report …"],
            error.ToString().TrimEnd().ReplaceLineEndings("\n").Split('\n')
        );
        Assert.DoesNotContain("…", output.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(100)]
    public async Task Conclusions_fit_the_width_of_the_terminal(int width)
    {
        using var copy = StudyCopy.Create();
        await using var output = new StringWriter();
        var terminal = new Terminal(output, TextWriter.Null, false, UsesColor: false, width);

        await Application.RunAsync(
            ["analyze", copy.Study],
            terminal,
            TestContext.Current.CancellationToken
        );

        var lines = output.ToString().ReplaceLineEndings("\n").Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= width, line));
        Assert.Contains(lines, line => line.Length > width - 15);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("plan")]
    [InlineData("protocols")]
    [InlineData("report")]
    [InlineData("analyze")]
    public async Task At_60_columns_only_a_command_to_be_copied_is_wider(string command)
    {
        using var copy = StudyCopy.Create();
        var run = await Run.With(
            terminal => terminal with { Width = 60, IsScreen = true },
            TestContext.Current.CancellationToken,
            command == "protocols" ? [command] : [command, copy.Study]
        );

        Assert.All(
            run.Out.ReplaceLineEndings("\n").Split('\n'),
            line => Assert.True(line.Length <= 60 || line.StartsWith(copy.Root, Comparison), line)
        );
    }

    [Theory]
    [InlineData("check")]
    [InlineData("plan")]
    [InlineData("report")]
    public async Task A_plain_screen_has_letters_and_signs_of_ascii_and_no_ruled_lines(
        string command
    )
    {
        using var copy = StudyCopy.Create();
        var run = await Run.With(
            terminal => terminal with { IsPlain = true, IsScreen = true },
            TestContext.Current.CancellationToken,
            command,
            copy.Study
        );

        Assert.All(run.Out, letter => Assert.True(letter <= '~', $"{letter}"));
        Assert.DoesNotContain("-----", run.Out, Comparison);
        Assert.DoesNotContain("=====", run.Out, Comparison);
        Assert.True(run.Out.Length > 300);
    }

    [Fact]
    public async Task An_error_inside_the_program_gives_code_70_and_says_that_it_is_one()
    {
        var run = await WithOutput(new InvalidOperationException("a defect"));

        Assert.Equal(ExitCode.InternalError, run.Code);
        Assert.StartsWith("An error inside the program", run.Error, StringComparison.Ordinal);
        Assert.Contains("a defect", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_output_that_cannot_be_written_is_no_error_inside_the_program()
    {
        var run = await WithOutput(new IOException("no space left"));

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("The output cannot be written: no space left", run.Error.TrimEnd());
    }

    private static async Task<Run> WithOutput(Exception failure)
    {
        await using var output = new FailingWriter(failure);
        await using var error = new StringWriter();
        var code = await Application.RunAsync(
            ["check", ExampleStudy.Folder],
            new Terminal(output, error, false, UsesColor: false, Terminal.DefaultWidth),
            TestContext.Current.CancellationToken
        );
        return new Run(code, "", error.ToString());
    }

    private sealed class FailingWriter(Exception failure) : TextWriter
    {
        public override System.Text.Encoding Encoding => System.Text.Encoding.UTF8;

        public override void Write(char value) => throw failure;
    }
}

namespace StabilityStudy.Cli.Tests;

/// <summary>Help, completions and manual pages, which come from one tree of commands.</summary>
public sealed class HelpTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    /// <summary>The names of all commands, from the program itself.</summary>
    internal static async Task<string[]> Commands() =>
        (await Run.Of("[suggest:16]", "stability-study "))
            .Out.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Trim())
            .ToArray();

    private static async Task<string[]> Proposed(string line) =>
        [
            .. (
                await Run.Of(
                    string.Create(CultureInfo.InvariantCulture, $"[suggest:{line.Length}]"),
                    line
                )
            )
                .Out.ReplaceLineEndings("\n")
                .Split('\n', StringSplitOptions.RemoveEmptyEntries),
        ];

    [Fact]
    public async Task Every_command_stands_in_the_overview_and_has_an_example()
    {
        var commands = await Commands();
        var overview = (await Run.Of("--help")).Out;

        Assert.True(commands.Length > 15);
        foreach (var command in commands)
        {
            Assert.Matches($@"(?m)^  {command} +\S", overview);
            var help = (await Run.Of(command, "--help")).Out;
            Assert.Contains("stability-study " + command, help.Split("Example")[^1], Comparison);
        }
    }

    [Theory]
    [InlineData(60)]
    [InlineData(100)]
    public async Task Help_fits_the_terminal(int width)
    {
        foreach (var command in (await Commands()).Prepend(""))
        {
            var run = await Run.With(
                terminal => terminal with { Width = width },
                TestContext.Current.CancellationToken,
                [.. command.Length > 0 ? (string[])[command] : [], "--help"]
            );
            Assert.All(
                run.Out.ReplaceLineEndings("\n").Split('\n'),
                line => Assert.True(line.Length <= width || IsOneWord(line.Trim()), line)
            );
        }
    }

    // A word, or what stands in quotation marks, is never broken.
    private static bool IsOneWord(string text) =>
        text[0] == '"' || !text.TrimEnd('\\', ' ').Contains(' ', Comparison);

    [Theory]
    [InlineData("stability-study che", new[] { "check" })]
    [InlineData("stability-study report study --format ", new[] { "html", "pdf", "text" })]
    [InlineData("stability-study check --su", new[] { "--suggest" })]
    [InlineData(
        "stability-study protocols frozen-",
        new[] { "frozen-plasma-20", "frozen-plasma-70" }
    )]
    [InlineData("stability-study start x --protocol pt-", new[] { "pt-whole-blood" })]
    public async Task What_may_follow_is_proposed_and_files_are_left_to_the_shell(
        string line,
        string[] words
    ) => Assert.Subset((await Proposed(line)).ToHashSet(), words.ToHashSet());

    [Fact]
    public async Task Nothing_is_proposed_where_a_file_is_wanted() =>
        Assert.Empty(await Proposed("stability-study check "));

    [Theory]
    [InlineData("bash", "complete -o default -F _stability_study stability-study")]
    [InlineData("zsh", "#compdef stability-study")]
    [InlineData("fish", "complete -c stability-study")]
    [InlineData("powershell", "Register-ArgumentCompleter -Native")]
    public async Task Each_shell_has_a_script_that_asks_the_program(string shell, string part)
    {
        var run = await Run.Of("completions", shell);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains(part, run.Out, Comparison);
        Assert.Contains("[suggest:", run.Out, Comparison);
        Assert.DoesNotContain("[U+", run.Out, Comparison);
    }

    [Fact]
    public async Task A_manual_page_is_written_for_each_command_and_tells_what_its_help_tells()
    {
        using var copy = StudyCopy.CreateOf("");
        var run = await Run.Of("manual", copy.At("man1"));

        Assert.Equal(ExitCode.Done, run.Code);
        var commands = await Commands();
        Assert.Equal(commands.Length + 1, Directory.GetFiles(copy.At("man1")).Length);
        foreach (var command in commands)
        {
            var page = await File.ReadAllTextAsync(
                copy.At("man1", $"stability-study-{command}.1"),
                TestContext.Current.CancellationToken
            );
            Assert.StartsWith(".TH STABILITY\\-STUDY\\-", page, Comparison);
            Assert.All(page, letter => Assert.True(letter is '\n' or (>= ' ' and <= '~')));
            foreach (var option in await Proposed($"stability-study {command} --"))
            {
                Assert.Contains(option.Replace("-", "\\-", Comparison), page, Comparison);
            }
        }
    }

    [Theory]
    [InlineData("chekc", "There is no command \"chekc\". Did you mean \"check\"?")]
    [InlineData("suported-windows", "Did you mean \"supported-windows\"?")]
    public async Task An_unknown_command_names_the_nearest(string typed, string says)
    {
        var run = await Run.Of(typed, "study", "--json");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(says, run.Error, Comparison);
    }

    [Theory]
    [InlineData("check", "--sugest", "--suggest")]
    [InlineData("report", "--formt", "--format")]
    [InlineData("supported-windows", "--asof", "--as-of")]
    public async Task An_unknown_option_names_the_nearest(
        string command,
        string typed,
        string meant
    )
    {
        var run = await Run.Of(command, "study", typed);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains($"Did you mean \"{meant}\"?", run.Error, Comparison);
        Assert.Contains($"stability-study {command} --help", run.Error, Comparison);
    }
}

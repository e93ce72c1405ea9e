using System.Text.RegularExpressions;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>README and guide: every link leads somewhere, every command is named, and the README stays short.</summary>
public sealed partial class GuideTests
{
    private const int LongestReadme = 150;

    public static TheoryData<string> Pages =>
        [
            "README.md",
            "DEVELOPERS.md",
            "protocols/README.md",
            "example-studies/README.md",
            .. Directory
                .GetFiles(At("src/StabilityStudy.Cli/Guide"), "*.md")
                .Select(file => "src/StabilityStudy.Cli/Guide/" + Path.GetFileName(file)),
        ];

    private static string At(string path) => Path.Combine(RepositoryFile.Root, path);

    private static Task<string> Text(string path) =>
        File.ReadAllTextAsync(At(path), TestContext.Current.CancellationToken);

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_link_leads_to_a_file(string page)
    {
        var folder = Path.GetDirectoryName(At(page))!;
        foreach (Match link in Link().Matches(await Text(page)))
        {
            var target = link.Groups["target"].Value.Split('#')[0];
            if (target.Length > 0 && !target.StartsWith("https://", StringComparison.Ordinal))
            {
                Assert.True(Path.Exists(Path.Combine(folder, target)), $"{page}: {target}");
            }
        }
    }

    [Fact]
    public async Task The_readme_is_short_and_names_every_command()
    {
        var readme = await Text("README.md");

        Assert.True(readme.Split('\n').Length < LongestReadme);
        foreach (var command in await HelpTests.Commands())
        {
            Assert.Contains($"`{command}`", readme, StringComparison.Ordinal);
        }
    }

    /// <summary>A call that a page shows is one that the program understands.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_command_that_is_shown_exists(string page)
    {
        var commands = await HelpTests.Commands();
        foreach (Match call in Call().Matches(await Text(page)))
        {
            Assert.Contains(call.Groups["command"].Value, commands);
            foreach (Match option in Option().Matches(call.Value))
            {
                var help = await Run.Of(call.Groups["command"].Value, "--help");
                Assert.Matches(Regex.Escape(option.Value) + @"(?![\w-])", help.Out + "--help");
            }
        }
    }

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Link();

    // In a block of code, up to the line's end or what is no longer typed; "--version" stands alone.
    [GeneratedRegex(
        @"(?m)^(?:\$ )?stability-study (?!--)(?<command>[a-z-]+)(?:[^\n\\]|\\\n)*",
        RegexOptions.ExplicitCapture,
        60_000
    )]
    private static partial Regex Call();

    [GeneratedRegex(@"(?<=\s)--[a-z][a-z-]*", RegexOptions.None, 60_000)]
    private static partial Regex Option();
}

using System.Text.RegularExpressions;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

/// <summary>What no text file of the repository may hold.</summary>
public sealed partial class SourceTextTests
{
    private static readonly string[] s_folders = ["src", "tests", "protocols", "example-studies"];

    private static readonly string[] s_kinds =
    [
        ".cs",
        ".csproj",
        ".csv",
        ".json",
        ".md",
        ".props",
        ".py",
        ".R",
        ".targets",
        ".toml",
        ".txt",
    ];

    [Fact]
    public void No_file_holds_a_path_of_somebody_s_machine()
    {
        var files = Files().ToArray();

        Assert.True(files.Length > 300);
        Assert.Empty(
            files.SelectMany(file =>
                File.ReadLines(file)
                    .Select((line, i) => (line, Number: i + 1))
                    .Where(item => MachinePath().IsMatch(item.line))
                    .Select(item =>
                        $"{Path.GetRelativePath(RepositoryFile.Root, file)} line {item.Number}: {item.line.Trim()}"
                    )
            )
        );
    }

    [Fact]
    public void The_console_is_reached_through_the_one_writer_that_filters()
    {
        string[] allowed = ["Program.cs", "Terminal.cs"];
        var program = Path.Combine(RepositoryFile.Root, "src");

        var used = Files()
            .Where(file =>
                file.StartsWith(program, StringComparison.Ordinal)
                && Path.GetExtension(file) == ".cs"
                && ConsoleUse().IsMatch(File.ReadAllText(file))
            )
            .Select(Path.GetFileName)
            .Order(StringComparer.Ordinal);

        Assert.Equal(allowed, used);
    }

    [GeneratedRegex(
        @"System\.Console\.|\bConsole\.(Out|Error|Write|Read|In|Open|Output)",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture
    )]
    private static partial Regex ConsoleUse();

    [Theory]
    [InlineData("File.ReadAllText(\"/{0}/someone/file\")", "home")]
    [InlineData("see /{0}/project/src", "tmp")]
    [InlineData(@"C:\{0}\someone", "Users")]
    public void The_rule_finds_such_a_path(string text, string folder) =>
        Assert.Matches(
            MachinePath(),
            string.Format(System.Globalization.CultureInfo.InvariantCulture, text, folder)
        );

    [Theory]
    [InlineData("https://example.org/home/page")]
    [InlineData("study/work/now")]
    [InlineData("mg/l and s/min")]
    public void The_rule_leaves_other_slashes_alone(string text) =>
        Assert.DoesNotMatch(MachinePath(), text);

    private static IEnumerable<string> Files() =>
        s_folders
            .SelectMany(folder =>
                Directory.EnumerateFiles(
                    Path.Combine(RepositoryFile.Root, folder),
                    "*",
                    SearchOption.AllDirectories
                )
            )
            .Concat(Directory.EnumerateFiles(RepositoryFile.Root))
            .Where(file =>
                s_kinds.Contains(Path.GetExtension(file), StringComparer.Ordinal)
                && !Path.GetRelativePath(RepositoryFile.Root, file)
                    .Split(Path.DirectorySeparatorChar)
                    .Any(part => part is "bin" or "obj" or "out")
            );

    /// <summary>A home, temporary or work folder from the root, or a folder on a drive.</summary>
    [GeneratedRegex(
        @"(?<![\w.\-/])/(home|root|tmp|work|workspace|Users|private|mnt|opt)/\w|(?<!\w)[A-Za-z]:\\\w\w",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex MachinePath();
}

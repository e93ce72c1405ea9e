using System.Text;
using System.Text.RegularExpressions;
using StabilityStudy.Cli.Tests.Walks;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>
/// The walk in example-studies/README.md: each command is run again, at the date that stands before it, and its output is what the page shows. Before a block, a comment
/// may set the clock ("at TIME") and the number of lines that are shown ("lines N").
/// </summary>
[Trait("lane", "slow")]
public sealed partial class ExampleWalkTests : IDisposable
{
    private const string Page = "example-studies/README.md";
    private const string Left = "…";
    private const string Example = "small-paired-sheet";
    private static readonly string[] s_folders = ["pt-2026", "keys", "register", "bench", Example];

    private readonly StudyCopy _copy = StudyCopy.CreateOf("");
    private readonly SetClock _clock = new();

    public void Dispose() => _copy.Dispose();

    [Fact]
    public async Task Every_command_answers_as_the_page_shows()
    {
        Directory.CreateDirectory(_copy.At("register"));
        Directory.CreateDirectory(_copy.At(Example));
        foreach (var name in (string[])["protocol.toml", "study.toml", "pairs.csv"])
        {
            File.Copy(Path.Combine(ExampleStudy.SmallFolder, name), _copy.At(Example, name));
        }

        var shown = await File.ReadAllTextAsync(
            Path.Combine(RepositoryFile.Root, Page),
            TestContext.Current.CancellationToken
        );
        var replayed = new StringBuilder();
        var lines = shown.Split('\n');
        var kept = int.MaxValue;
        for (var k = 0; k < lines.Length; k++)
        {
            replayed.Append(lines[k]).Append(k < lines.Length - 1 ? "\n" : "");
            if (Directive().Match(lines[k]) is { Success: true } directive)
            {
                kept = ObeyAndLines(directive.Groups["said"].Value);
            }
            else if (lines[k] == "```console")
            {
                while (lines[++k] != "```")
                {
                    if (lines[k].StartsWith("$ ", StringComparison.Ordinal))
                    {
                        replayed.Append(lines[k]).Append('\n');
                        replayed.Append(await Answer(lines[k][2..], kept));
                    }
                }

                replayed.Append("```\n");
                kept = int.MaxValue;
            }
        }

        var masked = Masked(replayed.ToString());
        RepositoryFile.RequireSame(Page, masked == Masked(shown) ? shown : replayed.ToString());
    }

    private int ObeyAndLines(string directive)
    {
        var kept = int.MaxValue;
        foreach (var part in directive.Split('·', StringSplitOptions.TrimEntries))
        {
            var (word, value) = (part.Split(' ')[0], part.Split(' ')[1]);
            if (word == "at")
            {
                _clock.Now = DateTimeOffset.Parse(value, CultureInfo.InvariantCulture);
            }
            else
            {
                Assert.Equal("lines", word);
                kept = int.Parse(value, CultureInfo.InvariantCulture);
            }
        }

        return kept;
    }

    private async Task<string> Answer(string command, int kept)
    {
        var words = Words(command).SelectMany(Placed).ToArray();
        if (words[0] == "cp")
        {
            foreach (var file in words[1..^1])
            {
                File.Copy(file, Path.Combine(words[^1], Path.GetFileName(file)), overwrite: true);
            }

            return "";
        }

        Assert.Equal("stability-study", words[0]);
        var run = await Run.With(
            terminal => terminal with { Clock = _clock, User = "ls1" },
            TestContext.Current.CancellationToken,
            words[1..]
        );
        // A screen shows both, and errors of a command that went well are hints.
        var text = (run.Out + run.Error)
            .ReplaceLineEndings("\n")
            .Replace(_copy.Root + Path.DirectorySeparatorChar, "", StringComparison.Ordinal)
            .TrimEnd();
        var answer = text.Split('\n').Select(line => line.TrimEnd()).ToArray();
        if (answer.Length > kept)
        {
            answer = [.. answer[..kept], Left];
        }

        var code =
            run.Code == ExitCode.Done
                ? ""
                : string.Create(CultureInfo.InvariantCulture, $"(exit code {(int)run.Code})\n");
        return string.Join('\n', answer) + "\n" + code;
    }

    /// <summary>A word as it stands in the folder of the test; a star is filled in as a shell does.</summary>
    private IEnumerable<string> Placed(string word)
    {
        // The ready protocol of this name is no folder.
        if (!s_folders.Contains(word.Split('/')[0]) || word == Example)
        {
            return [word];
        }

        var path = Path.Combine(_copy.Root, word);
        var folder = Path.GetDirectoryName(path)!;
        return word.Contains('*', StringComparison.Ordinal) && Directory.Exists(folder)
            ? Directory.GetFiles(folder, Path.GetFileName(path))
            : [path];
    }

    private static IEnumerable<string> Words(string command) =>
        Word()
            .Matches(command)
            .Select(match => match.Value.Replace("\"", "", StringComparison.Ordinal));

    // Digests of what keys and contents gave, and what follows from the length of a signature.
    private static string Masked(string text) => Digest().Replace(text, "#");

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""", RegexOptions.None, 60_000)]
    private static partial Regex Word();

    [GeneratedRegex("^<!-- (?<said>.*) -->$", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Directive();

    [GeneratedRegex("[0-9a-f]{8,}", RegexOptions.None, 60_000)]
    private static partial Regex Digest();
}

using System.CommandLine;

namespace StabilityStudy.Cli.Help;

/// <summary>The description of a command, taken apart: paragraphs are divided by an empty line, and one that begins "Example:" or "Examples:" holds commands.</summary>
internal sealed record CommandText(
    ImmutableArray<string> Paragraphs,
    ImmutableArray<Examples> Examples
)
{
    private static readonly ImmutableArray<string> s_ends = [". ", ": ", "; "];

    public static CommandText Of(Command command)
    {
        var paragraphs = (command.Description ?? "").Split("\n\n");
        return new CommandText(
            [.. paragraphs.Where(paragraph => !IsExample(paragraph))],
            [.. paragraphs.Where(IsExample).Select(ExamplesOf)]
        );
    }

    /// <summary>What it does in one line, for a list of commands: up to the first full stop, colon or semicolon.</summary>
    public string Summary
    {
        get
        {
            var first = Paragraphs[0];
            var end = s_ends
                .Select(mark => first.IndexOf(mark, StringComparison.Ordinal))
                .Where(position => position >= 0)
                .DefaultIfEmpty(first.Length)
                .Min();
            return first[..end].TrimEnd('.');
        }
    }

    // A heading, then commands that are set in.
    private static bool IsExample(string paragraph) =>
        paragraph.Contains(":\n  ", StringComparison.Ordinal);

    private static Examples ExamplesOf(string paragraph)
    {
        var lines = paragraph.Split('\n', 2);
        return new Examples(
            lines[0].TrimEnd(':'),
            [
                .. lines[1]
                    .Replace("\\\n", "", StringComparison.Ordinal)
                    .Split('\n')
                    .Select(line => line.Trim()),
            ]
        );
    }
}

/// <summary>Commands to try, each as it is typed.</summary>
/// <param name="Heading">What they are.</param>
/// <param name="Lines">A command a line.</param>
internal sealed record Examples(string Heading, ImmutableArray<string> Lines);

namespace StabilityStudy.Cli.Help;

/// <summary>A command as it is typed, broken into lines that a shell takes as one: only between words, never inside quotation marks, with a backslash before the line's end.</summary>
internal static class ShellWords
{
    private const string GoesOn = " \\";

    /// <param name="command">The command on one line.</param>
    /// <param name="width">Columns of a line, its indent included.</param>
    /// <param name="indent">Before the lines that follow.</param>
    public static ImmutableArray<string> Wrap(string command, int width, string indent)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        var words = Words(command).ToArray();
        for (var k = 0; k < words.Length; k++)
        {
            var joined = line.Length == 0 ? words[k] : line + " " + words[k];
            var needed = joined.Length + (k < words.Length - 1 ? GoesOn.Length : 0);
            if (needed > width && line.Length > 0)
            {
                lines.Add(line + GoesOn);
                joined = indent + words[k];
            }

            line = joined;
        }

        lines.Add(line);
        return lines.ToImmutable();
    }

    private static IEnumerable<string> Words(string command)
    {
        var start = 0;
        var isQuoted = false;
        for (var k = 0; k < command.Length; k++)
        {
            if (command[k] == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (command[k] == ' ' && !isQuoted)
            {
                if (k > start)
                {
                    yield return command[start..k];
                }

                start = k + 1;
            }
        }

        yield return command[start..];
    }
}

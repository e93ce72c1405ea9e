using System.Text;

namespace StabilityStudy.Files.Suggestions;

/// <summary>
/// Puts proposed tables of [read] into study.toml. The lines of a table that is replaced go; every comment and every other line stays
/// where it is.
/// </summary>
internal static class FactsEdit
{
    private const string Begins =
        "# ----- suggested by check --suggest; a line with # before it is a question -----";
    private const string Question = "# question ";

    /// <summary>The file with the tables; null where a table of [read] is written in braces, which cannot be replaced line by line.</summary>
    /// <param name="facts">study.toml.</param>
    /// <param name="tables">Name of each table below [read], and its text.</param>
    public static string? Write(string facts, ImmutableArray<(string Section, string Text)> tables)
    {
        var isCrLf = facts.Contains("\r\n", StringComparison.Ordinal);
        var kept = new List<string>();
        var isReplaced = false;
        string? text = null;
        foreach (var line in facts.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
        {
            var isInText = text is not null;
            text = TextAfter(line, text);
            if (!isInText && HeaderOf(line) is { } header)
            {
                isReplaced = tables.Any(table =>
                    header == $"read.{table.Section}"
                    || header.StartsWith($"read.{table.Section}.", StringComparison.Ordinal)
                );
            }
            else if (!isInText && IsInBraces(line, tables))
            {
                return null;
            }

            var isOwn =
                line == Begins
                || (line.StartsWith('#') && line.Contains(Question, StringComparison.Ordinal));
            var isComment = !isInText && line.TrimStart().StartsWith('#');
            if ((!isReplaced || isComment) && !isOwn)
            {
                kept.Add(line);
            }
        }

        var written = new StringBuilder(string.Join('\n', kept).TrimEnd('\n'))
            .Append("\n\n")
            .Append(Begins)
            .Append('\n');
        foreach (var (_, table) in tables)
        {
            written.Append(table).Append('\n');
        }

        var result = written.ToString().TrimEnd('\n') + "\n";
        return isCrLf ? result.Replace("\n", "\r\n", StringComparison.Ordinal) : result;
    }

    // The name of the table of a header line; null for another line.
    private static string? HeaderOf(string line)
    {
        var plain = line.Trim();
        if (!plain.StartsWith('['))
        {
            return null;
        }

        var end = plain.IndexOf(']', StringComparison.Ordinal);
        return end < 0
            ? null
            : plain[..end]
                .TrimStart('[')
                .Replace(" ", "", StringComparison.Ordinal)
                .Replace("\"", "", StringComparison.Ordinal);
    }

    private static bool IsInBraces(
        string line,
        ImmutableArray<(string Section, string Text)> tables
    )
    {
        var plain = line.Replace(" ", "", StringComparison.Ordinal);
        return plain.StartsWith("read={", StringComparison.Ordinal)
            || tables.Any(table =>
                plain.StartsWith($"{table.Section}={{", StringComparison.Ordinal)
                || plain.StartsWith($"read.{table.Section}", StringComparison.Ordinal)
            );
    }

    /// <summary>The sign that ends a text of several lines in which the file is after a line; null where it is in none.</summary>
    private static string? TextAfter(string line, string? before)
    {
        var open = before;
        for (var i = 0; i < line.Length; i++)
        {
            if (open is not null)
            {
                if (line.AsSpan(i).StartsWith(open, StringComparison.Ordinal))
                {
                    i += open.Length - 1;
                    open = null;
                }
                else if (line[i] == '\\' && open[0] == '"')
                {
                    i++;
                }
            }
            else if (line[i] == '#')
            {
                break;
            }
            else if (line[i] is '"' or '\'')
            {
                open =
                    line.AsSpan(i).StartsWith("\"\"\"", StringComparison.Ordinal)
                    || line.AsSpan(i).StartsWith("'''", StringComparison.Ordinal)
                        ? new string(line[i], 3)
                        : line[i].ToString();
                i += open.Length - 1;
            }
        }

        return open is { Length: 3 } ? open : null;
    }
}

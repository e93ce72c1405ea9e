using StabilityStudy.Files.Suggestions;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>What is suggested for delivered files: dialect, columns, rows as they would be read, questions, text to paste.</summary>
internal static class SuggestionListing
{
    private const int NarrowName = 11;
    private const int WideName = 17;
    private const int Value = 20;
    private const int ReadAs = 13;
    private const int Sure = 7;
    private const int MostColumns = 40;

    /// <summary>Writes it.</summary>
    public static void Write(Terminal terminal, StudySuggestion suggestion)
    {
        var read = suggestion.Files.Where(file => file.Kind.Length > 0).ToArray();
        WrappedText.Write(terminal, Headline(suggestion, read.Length));
        foreach (var file in suggestion.Files)
        {
            terminal.Out.WriteLine();
            WriteFile(terminal, file);
        }

        if (!suggestion.Questions.IsEmpty)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine("Ask yourself");
            foreach (
                var (question, i) in suggestion.Questions.Select((question, i) => (question, i))
            )
            {
                WrappedText.Write(
                    terminal,
                    string.Create(CultureInfo.InvariantCulture, $"  {i + 1}. {question.Text}"),
                    "     "
                );
            }
        }

        if (read.Length > 0)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine("----- paste into study.toml -----");
            terminal.Out.Write(suggestion.Text);
            terminal.Out.WriteLine("----- end -----");
        }
    }

    private static string Headline(StudySuggestion suggestion, int read)
    {
        if (read == 0)
        {
            return suggestion.Files.IsEmpty
                ? "Nothing to suggest: every table of the folder is read as it is."
                : "Nothing to suggest: no other file looks like tubes, results or controls.";
        }

        var questions = suggestion.Questions.Length;
        var numbers = suggestion.Questions.Count(question => question.CouldChangeNumbers);
        return Count(read, "file")
            + " read. "
            + (
                questions == 0
                    ? "No question."
                    : $"{Count(questions, "question")} before {(read == 1 ? "it" : "they")} can be used"
                        + (
                            numbers == 0
                                ? "."
                                : string.Create(
                                    CultureInfo.InvariantCulture,
                                    $"; {numbers} could turn numbers wrong."
                                )
                        )
            );
    }

    private static void WriteFile(Terminal terminal, SuggestedFile file)
    {
        terminal.Out.WriteLine(
            file.Kind.Length == 0
                ? $"{file.Name}   {file.Extent}"
                : $"{file.Name}   {file.Extent}: {file.Kind}"
        );
        foreach (var setting in file.Settings)
        {
            WriteRow(
                terminal,
                [
                    (setting.Name, NarrowName),
                    (setting.Value, Value),
                    (file.Kind.Length == 0 ? "" : Word(setting.HowSure), Sure),
                ],
                setting.Why
            );
        }

        if (!file.Columns.IsEmpty)
        {
            terminal.Out.WriteLine();
            WriteRow(
                terminal,
                [("column", WideName), ("read as", ReadAs), ("how sure", Sure + 2)],
                "why, and what speaks against it"
            );
            foreach (var column in file.Columns.Take(MostColumns))
            {
                WriteRow(
                    terminal,
                    [
                        (column.Header, WideName),
                        (column.ReadAs, ReadAs),
                        (Word(column.HowSure), Sure + 2),
                    ],
                    column.Why
                );
            }

            if (file.Columns.Length > MostColumns)
            {
                terminal.Out.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"  and {file.Columns.Length - MostColumns} more, not read"
                    )
                );
            }
        }

        if (file.Kind.Length > 0)
        {
            terminal.Out.WriteLine();
            WriteRows(terminal, file.Rows);
        }
    }

    private static void WriteRows(Terminal terminal, SuggestedRows? rows)
    {
        if (rows is null)
        {
            terminal.Out.WriteLine("No row can be read before the questions are answered.");
            return;
        }

        terminal.Out.WriteLine("Three rows as they would be read (first, middle, last)");
        ImmutableArray<ImmutableArray<string>> lines =
        [
            ["line", .. rows.Header],
            .. rows.Rows.Select(row =>
                row.Fields.Insert(0, row.Line.ToString(CultureInfo.InvariantCulture))
            ),
        ];
        var widths = Enumerable
            .Range(0, lines[0].Length)
            .Select(i => lines.Max(line => TextLines.Length(line[i])))
            .ToArray();
        foreach (var line in lines)
        {
            terminal.Out.WriteLine(
                (
                    "  "
                    + string.Join(
                        ' ',
                        line.Select(
                            (field, i) =>
                                i == 0 ? field.PadLeft(widths[i]) : field.PadRight(widths[i])
                        )
                    )
                ).TrimEnd()
            );
        }

        foreach (var remark in rows.Remarks)
        {
            WrappedText.Write(terminal, "  " + remark, "  ");
        }
    }

    /// <summary>Cells of a width each, then a text that goes on below itself; a cell that is too wide has its line to itself.</summary>
    private static void WriteRow(
        Terminal terminal,
        ReadOnlySpan<(string Text, int Width)> cells,
        string text
    )
    {
        var line = "  ";
        var indent = 2;
        foreach (var (cell, width) in cells)
        {
            line += cell;
            indent += width + 1;
            if (TextLines.Length(line) >= indent)
            {
                terminal.Out.WriteLine(line.TrimEnd());
                line = "";
            }

            line = line.PadRight(indent);
        }

        var margin = new string(' ', indent);
        foreach (
            var (part, i) in TextLines
                .WrapLine(text, Math.Max(20, terminal.Width - indent))
                .Select((part, i) => (part, i))
        )
        {
            terminal.Out.WriteLine(((i == 0 ? line : margin) + part).TrimEnd());
        }

        if (text.Length == 0)
        {
            terminal.Out.WriteLine(line.TrimEnd());
        }
    }

    private static string Word(HowSure sure) =>
        sure switch
        {
            HowSure.Ask => "ASK",
            HowSure.Likely => "likely",
            HowSure.Sure => "sure",
        };

    private static string Count(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}

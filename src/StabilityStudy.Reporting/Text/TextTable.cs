namespace StabilityStudy.Reporting.Text;

/// <summary>Writes a table in columns of characters, or row by row where the columns would be too narrow for their words: none is broken.</summary>
internal static class TextTable
{
    private const string Gap = "  ";

    /// <summary>Writes caption, head, rows and note.</summary>
    public static ImmutableArray<string> Write(Table table, int width)
    {
        var widths = Widths(table, width);
        var lines = ImmutableArray.CreateBuilder<string>();
        lines.AddRange(TextLines.Wrap(table.Caption, width));
        if (widths.IsEmpty)
        {
            AddRowByRow(lines, table, width);
        }
        else
        {
            lines.AddRange(RowLines([.. table.Columns.Select(c => c.Header)], table, widths));
            lines.Add(string.Join(Gap, widths.Select(w => new string('-', w))));
            foreach (var row in table.Rows)
            {
                lines.AddRange(
                    row.Kind == RowKind.GroupHeading
                        ? TextLines.Wrap(Text(row.Cells[0]), width)
                        : RowLines([.. row.Cells.Select(Text)], table, widths)
                );
            }
        }

        if (table.Note is { } note)
        {
            lines.AddRange(TextLines.Wrap(note, width));
        }

        return lines.ToImmutable();
    }

    private static string Text(TableCell cell) =>
        cell.Shape is { } shape ? ShapeMark.Of(shape) + " " + cell.Text : cell.Text;

    /// <summary>Widths in characters; empty when not every column can hold its longest word.</summary>
    private static ImmutableArray<int> Widths(Table table, int width)
    {
        var room = width - (Gap.Length * (table.Columns.Length - 1));
        var wanted = table
            .Columns.Select(
                (c, i) =>
                    table
                        .Rows.Where(r => r.Kind == RowKind.Data)
                        .Select(r => TextLines.Length(Text(r.Cells[i])))
                        .Append(TextLines.Length(c.Header))
                        .Max()
            )
            .ToArray();
        // Columns give way as far as their longest words allow, first with a number and its unit as one word.
        foreach (var splitsUnits in new[] { false, true })
        {
            var words = table
                .Columns.Select((_, i) => LongestWord(table, i, splitsUnits))
                .ToArray();
            while (wanted.Sum() > room && Widest(i => wanted[i] > words[i]) is { } yielding)
            {
                wanted[yielding]--;
            }
        }

        return wanted.Sum() > room ? [] : [.. wanted.Select(w => Math.Max(1, w))];

        int? Widest(Func<int, bool> mayShrink) =>
            Enumerable
                .Range(0, wanted.Length)
                .Where(mayShrink)
                .OrderByDescending(i => wanted[i])
                .Select(i => (int?)i)
                .FirstOrDefault();
    }

    private static int LongestWord(Table table, int column, bool splitsUnits) =>
        table
            .Rows.Where(r => r.Kind == RowKind.Data)
            .Select(r => Text(r.Cells[column]))
            .Append(table.Columns[column].Header)
            .SelectMany(text => text.Split('\n'))
            .SelectMany(line => UnitWords.Of(TextLines.Visible(line), _ => !splitsUnits))
            .Select(TextLines.Length)
            .DefaultIfEmpty(0)
            .Max();

    private static IEnumerable<string> RowLines(
        ImmutableArray<string> cells,
        Table table,
        ImmutableArray<int> widths
    )
    {
        var wrapped = cells.Select((c, i) => TextLines.Wrap(c, widths[i])).ToArray();
        for (var line = 0; line < wrapped.Max(c => c.Length); line++)
        {
            yield return string.Join(
                Gap,
                wrapped.Select(
                    (c, i) =>
                        TextLines.Padded(
                            line < c.Length ? c[line] : "",
                            widths[i],
                            table.Columns[i].Alignment
                                is ColumnAlignment.Left
                                    or ColumnAlignment.Center
                        )
                )
            );
        }
    }

    private static void AddRowByRow(ImmutableArray<string>.Builder lines, Table table, int width)
    {
        foreach (var row in table.Rows)
        {
            if (row.Kind == RowKind.GroupHeading)
            {
                lines.AddRange(TextLines.Wrap(Text(row.Cells[0]), width));
                continue;
            }

            for (var i = 0; i < row.Cells.Length; i++)
            {
                if (i > 0 && row.Cells[i].Text.Length == 0)
                {
                    continue;
                }

                var entry = table.Columns[i].Header + ": " + Text(row.Cells[i]);
                lines.AddRange(TextLines.Wrap(entry, width, i == 0 ? "" : "    "));
            }
        }

        if (table.Rows.IsEmpty)
        {
            lines.AddRange(
                TextLines.Wrap(string.Join(", ", table.Columns.Select(c => c.Header)), width)
            );
        }
    }
}

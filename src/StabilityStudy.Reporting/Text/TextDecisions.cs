namespace StabilityStudy.Reporting.Text;

/// <summary>Table 1 as lines: each row with its evidence below, then what to weigh, numbered.</summary>
internal static class TextDecisions
{
    private const string Indent = "    ";

    public static ImmutableArray<string> Write(DecisionTable table, int width) =>
        [
            .. table.Rows.SelectMany(row => Row(table.Head, row, width)),
            .. TextLines.Wrap(table.Note, width),
        ];

    private static IEnumerable<string> Row(EvidenceHead head, DecisionRow row, int width) =>
        [
            .. Hanging(ShapeMark.Of(row.Shape) + " ", $"{row.Name}: {row.Conclusion}", width),
            .. TextLines.Wrap(row.Facts, width, Indent),
            .. row.DecideNow is { } now
                ? TextLines.Wrap($"! {DecisionTable.DecideNow} {now}", width, Indent)
                : [],
            .. TextTable
                .Write(
                    new Table(
                        "",
                        [
                            new Column(head.Waited, ColumnAlignment.Left, 0.7),
                            new Column(head.Change, ColumnAlignment.Left, 2.4),
                            new Column(head.Share, ColumnAlignment.Left, 2.2),
                            new Column(head.Conclusion, ColumnAlignment.Left, 1.4),
                        ],
                        [
                            .. row.Evidence.Select(line => new Row([
                                new TableCell(line.Waited),
                                new TableCell(line.Change),
                                new TableCell(line.Share),
                                new TableCell(line.Conclusion),
                            ])),
                        ],
                        null
                    ),
                    width - Indent.Length
                )
                .Select(line => line.Length == 0 ? line : Indent + line),
            .. row.Remarks.SelectMany(text => TextLines.Wrap(text, width, Indent)),
            .. row.Reservations.SelectMany(
                (item, i) =>
                    Hanging(
                        string.Create(CultureInfo.InvariantCulture, $"{Indent}{i + 1}. "),
                        item.InFull,
                        width
                    )
            ),
            "",
        ];

    private static ImmutableArray<string> Hanging(string mark, string text, int width)
    {
        var lines = TextLines.Wrap(text, width, new string(' ', mark.Length));
        return lines.SetItem(0, mark + lines[0][mark.Length..]);
    }
}

using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Lays out a table: caption, head, a piece a row, note.</summary>
internal static class TableLayout
{
    // A row that no page can hold is split into parts of this share of a page.
    private const double PartOfPage = 0.25;

    public static ImmutableArray<Piece> Pieces(
        Table table,
        PageFrame frame,
        bool isClose,
        ImmutableArray<Tag> tags
    )
    {
        var columns = TableColumns.Of(table, frame, isClose);
        var inTable = tags.Add(new Tag("Table"));
        var captionStyle = TextStyle.TableCaption;
        var caption = LineColumns
            .Pieces(
                [
                    ProseLayout.Column(
                        frame.Left,
                        captionStyle,
                        table.Caption,
                        frame.ContentWidth,
                        "Caption"
                    ),
                ],
                isClose ? 5 : 7,
                inTable
            )
            .Select(p => p with { HoldNext = Hold.Firm })
            .ToImmutableArray();
        var head = Head(table, columns, inTable);
        var rows = Rows(table, columns, frame, head, inTable);
        var note = table.Note is null
            ? []
            : LineColumns.Pieces(
                [
                    ProseLayout.Column(
                        frame.Left,
                        TextStyle.Small,
                        table.Note,
                        frame.ContentWidth,
                        "P"
                    ),
                ],
                3,
                tags
            );
        var lastRow = rows.Length == 0 ? head with { HoldNext = Hold.None } : rows[^1];
        if (note.Length > 0)
        {
            lastRow = lastRow with { HoldNext = Hold.Firm };
        }

        return rows.Length == 0
            ? [.. caption, lastRow, .. note]
            : [.. caption, head, .. rows[..^1], lastRow, .. note];
    }

    private static Piece Head(Table table, TableColumns columns, ImmutableArray<Tag> tags)
    {
        var style = columns.Style with { Face = ReportFonts.Semibold };
        var cells = table
            .Columns.Select(
                (c, i) =>
                    CellText.Set(
                        new TableCell(c.Header),
                        c.Alignment == ColumnAlignment.DecimalPoint
                            ? ColumnAlignment.Center
                            : c.Alignment,
                        default,
                        style,
                        columns.TextWidth(i, null),
                        0
                    )
            )
            .ToImmutableArray();
        return RowDrawing.Head(new TableRow(cells, columns), tags.Add(new Tag("TR"))) with
        {
            HoldNext = Hold.Firm,
        };
    }

    private static ImmutableArray<Piece> Rows(
        Table table,
        TableColumns columns,
        PageFrame frame,
        Piece head,
        ImmutableArray<Tag> tags
    )
    {
        var repeated = RowDrawing.Repeated(head, table.Caption, frame);
        var decimals = table
            .Columns.Select(
                (c, i) =>
                    c.Alignment == ColumnAlignment.DecimalPoint
                        ? DecimalAlignment.Of(table, i, columns.Style, columns.TextWidth(i, null))
                        : default
            )
            .ToImmutableArray();
        var room = frame.ContentHeight - repeated.Height;
        var partLines = Math.Max(1, (int)(room * PartOfPage / columns.Style.Leading));
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        for (var i = 0; i < table.Rows.Length; i++)
        {
            var row = Row(table, i, columns, decimals);
            var step = row.Height <= room ? row.LineCount : partLines;
            for (var line = 0; line < row.LineCount; line += step)
            {
                var part = row.Part(line, step);
                var last = line + step >= row.LineCount;
                pieces.Add(
                    RowDrawing.Row(
                        part,
                        tags.Add(new Tag("TR")),
                        table.Rows[i].Kind,
                        !last ? RowRule.None
                            : i == table.Rows.Length - 1 ? RowRule.EndOfTable
                            : RowRule.EndOfRow
                    ) with
                    {
                        RepeatedAbove = repeated,
                        HoldNext = last ? HoldAfter(table, i) : Hold.None,
                    }
                );
            }
        }

        return pieces.ToImmutable();
    }

    /// <summary>No single row stands alone at either end of a page, and no group heading below its rows.</summary>
    private static Hold HoldAfter(Table table, int row) =>
        (
            row == 0
            || (row == 1 && table.Rows[0].Kind == RowKind.GroupHeading)
            || row == table.Rows.Length - 2
            || table.Rows[row].Kind == RowKind.GroupHeading
        )
        && row < table.Rows.Length - 1
            ? Hold.Firm
            : Hold.None;

    private static TableRow Row(
        Table table,
        int index,
        TableColumns columns,
        ImmutableArray<DecimalAlignment> decimals
    )
    {
        var row = table.Rows[index];
        if (row.Kind == RowKind.GroupHeading)
        {
            var wide = columns.Widths.Sum() - (2 * TableColumns.Padding);
            var style = columns.Style with { Face = ReportFonts.Semibold };
            var shape = row.Cells[0].Shape is null ? 0 : columns.ShapeWidth;
            return new TableRow(
                [
                    CellText.Set(
                        row.Cells[0],
                        ColumnAlignment.Left,
                        default,
                        style,
                        wide - shape,
                        shape
                    ),
                ],
                columns
            );
        }

        return new TableRow(
            [
                .. row.Cells.Select(
                    (c, i) =>
                        CellText.Set(
                            c,
                            table.Columns[i].Alignment,
                            decimals[i],
                            CellText.StyleOf(c, columns.Style),
                            columns.TextWidth(i, c.Shape),
                            columns.ShapeWidth
                        )
                ),
            ],
            columns
        );
    }
}

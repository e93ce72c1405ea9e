namespace StabilityStudy.Reporting.Pdf;

/// <summary>Makes the pieces of a table's rows: rules as artifacts, cells as structure elements.</summary>
internal static class RowDrawing
{
    private const double HeavyRule = 0.9;
    private const double MediumRule = 0.5;
    private const double ThinRule = 0.3;

    /// <summary>The column heads, their last lines on one baseline.</summary>
    public static Piece Head(TableRow row, ImmutableArray<Tag> tags) =>
        new(
            row.Height + 1,
            2,
            tags,
            (canvas, top) =>
            {
                DrawHeadRules(row, canvas, top);
                for (var i = 0; i < row.Cells.Length; i++)
                {
                    var cell = i;
                    canvas.TaggedHead("Column", 1, () => DrawHeadCell(row, cell, canvas, top));
                }
            }
        );

    /// <summary>The caption, marked as continued, and the column heads, for the next pages.</summary>
    public static Piece Repeated(Piece head, string caption, PageFrame frame)
    {
        var style = TextStyle.Small;
        var lines = LineBreaking.Break(caption + " (continued)", style, frame.ContentWidth);
        var captionHeight = (lines.Length * style.Leading) + 2;
        return new Piece(
            captionHeight + head.Height,
            0,
            head.Tags,
            (canvas, top) =>
            {
                canvas.Artifact(() =>
                {
                    for (var i = 0; i < lines.Length; i++)
                    {
                        canvas.Text(lines[i], style, frame.Left, top + (i * style.Leading));
                    }
                });
                canvas.Untagged(() => head.Draw(canvas, top + captionHeight));
            }
        );
    }

    /// <summary>A data row or a group heading.</summary>
    public static Piece Row(TableRow row, ImmutableArray<Tag> tags, RowKind kind, RowRule rule) =>
        new(
            row.Height,
            0,
            tags,
            (canvas, top) =>
            {
                if (rule != RowRule.None)
                {
                    var isLast = rule == RowRule.EndOfTable;
                    var width = isLast ? HeavyRule : ThinRule;
                    DrawRule(row, canvas, top + row.Height, width, isLast);
                }

                for (var i = 0; i < row.Cells.Length; i++)
                {
                    DrawShape(row, i, canvas, top);
                    var cell = i;
                    if (kind == RowKind.GroupHeading)
                    {
                        canvas.TaggedHead(
                            "Row",
                            row.Columns.Widths.Length,
                            () => DrawCell(row, cell, 0, canvas, top)
                        );
                    }
                    else
                    {
                        canvas.Tagged("TD", () => DrawCell(row, cell, 0, canvas, top));
                    }
                }
            }
        );

    private static void DrawHeadRules(TableRow row, PageCanvas canvas, double top)
    {
        DrawRule(row, canvas, top, HeavyRule, isStrong: true);
        DrawRule(row, canvas, top + row.Height, MediumRule, isStrong: true);
    }

    private static void DrawHeadCell(TableRow row, int index, PageCanvas canvas, double top)
    {
        var missing = row.LineCount - row.Cells[index].Lines.Length;
        DrawCell(row, index, missing, canvas, top);
    }

    private static void DrawCell(
        TableRow row,
        int index,
        int emptyLines,
        PageCanvas canvas,
        double top
    )
    {
        var cell = row.Cells[index];
        for (var i = 0; i < cell.Lines.Length; i++)
        {
            canvas.Text(
                cell.Lines[i] + (i < cell.Lines.Length - 1 ? " " : ""),
                cell.Style,
                row.Columns.Lefts[index] + cell.Offsets[i],
                top + row.PaddingAbove + ((i + emptyLines) * row.Columns.Style.Leading)
            );
        }
    }

    private static void DrawShape(TableRow row, int index, PageCanvas canvas, double top)
    {
        if (row.Cells[index].Shape is { } shape)
        {
            var style = row.Columns.Style;
            var left =
                row.Columns.Lefts[index] + row.Cells[index].Offsets[0] - row.Columns.ShapeWidth;
            VerdictGlyph.Draw(
                shape,
                left,
                top + row.PaddingAbove + ((style.Leading - style.Size) / 2),
                style.Size,
                canvas
            );
        }
    }

    private static void DrawRule(
        TableRow row,
        PageCanvas canvas,
        double y,
        double width,
        bool isStrong
    ) =>
        canvas.Artifact(() =>
            canvas.Line(
                row.Columns.Lefts[0],
                y,
                row.Columns.Lefts[^1] + row.Columns.Widths[^1],
                y,
                width,
                isStrong ? TextStyle.Ink : TextStyle.Hairline
            )
        );
}

/// <summary>The rule below a row.</summary>
internal enum RowRule
{
    /// <summary>None: the row goes on below.</summary>
    None,

    /// <summary>A hairline.</summary>
    EndOfRow,

    /// <summary>A heavy line.</summary>
    EndOfTable,
}

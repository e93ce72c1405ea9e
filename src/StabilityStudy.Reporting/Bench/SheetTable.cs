using PdfSharp.Drawing;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>A column of a sheet.</summary>
/// <param name="Head">What it is; a second line after a line feed.</param>
/// <param name="Width">Width in points.</param>
internal sealed record SheetColumn(string Head, double Width)
{
    /// <summary>Whether it is one of those that a hurried reader needs.</summary>
    public bool IsStrong { get; init; }

    /// <summary>What stands above from there on, behind an upright line; empty for the line alone, null for neither.</summary>
    public string? Part { get; init; }
}

/// <summary>A row of a sheet.</summary>
/// <param name="Height">Height in points.</param>
/// <param name="Cells">One for each column; null where a cell of a row above reaches into it.</param>
internal sealed record SheetRow(double Height, ImmutableArray<SheetCell?> Cells)
{
    /// <summary>Whether the line above it is a heavy one.</summary>
    public bool IsHeavy { get; init; }
}

/// <summary>A table to write in.</summary>
/// <param name="Columns">Columns from left to right.</param>
internal sealed record SheetTable(ImmutableArray<SheetColumn> Columns)
{
    private static readonly double s_padding = Mm(1);
    private static readonly double s_partHeight = Mm(4.6);
    private const double Thin = 0.4;
    private const double Medium = 0.8;
    private const double Heavy = 1.4;

    private bool HasParts => Columns.Any(column => !string.IsNullOrEmpty(column.Part));

    /// <summary>Height of the head in points.</summary>
    public double HeadHeight =>
        (HasParts ? s_partHeight : 0)
        + (Columns.Max(column => HeadLines(column).Length) * SheetText.Head.Leading)
        + Mm(2);

    private double[] Lefts(double left) =>
        [.. Columns.Select((_, i) => left + Columns.Take(i).Sum(column => column.Width))];

    /// <summary>Draws the table.</summary>
    /// <param name="canvas">Where.</param>
    /// <param name="left">Left edge.</param>
    /// <param name="top">Upper edge.</param>
    /// <param name="rows">The rows.</param>
    /// <returns>Where the table ends.</returns>
    public double Draw(PageCanvas canvas, double left, double top, ImmutableArray<SheetRow> rows)
    {
        var lefts = Lefts(left);
        var right = lefts[^1] + Columns[^1].Width;
        var table = new Tag("Table", isGrouping: true);
        DrawHead(canvas, lefts, top, table);
        var y = top + HeadHeight;
        var open = new int[Columns.Length];
        foreach (var row in rows)
        {
            canvas.Enter([table, new Tag("TR", isGrouping: true)]);
            DrawRuleAbove(canvas, row, lefts, right, y, open, isFirst: y == top + HeadHeight);
            for (var i = 0; i < row.Cells.Length; i++)
            {
                open[i]--;
                if (row.Cells[i] is { } cell)
                {
                    open[i] = cell.Rows - 1;
                    DrawCell(canvas, cell, Room(rows, row, cell, lefts[i], i, y));
                }
            }

            y += row.Height;
        }

        canvas.Artifact(() =>
        {
            canvas.Line(left, y, right, y, Medium, TextStyle.Ink);
            foreach (var (i, column) in Columns.Index().Where(item => item.Item.Part is not null))
            {
                canvas.Line(lefts[i], top, lefts[i], y, Medium, TextStyle.Ink);
            }
        });
        canvas.Enter([]);
        return y;
    }

    private XRect Room(
        ImmutableArray<SheetRow> rows,
        SheetRow row,
        SheetCell cell,
        double left,
        int column,
        double y
    ) =>
        new(
            left + s_padding,
            y,
            Columns[column].Width - (2 * s_padding),
            rows.SkipWhile(item => item != row).Take(cell.Rows).Sum(item => item.Height)
        );

    private static void DrawCell(PageCanvas canvas, SheetCell cell, XRect room)
    {
        if (cell.IsHead)
        {
            canvas.TaggedHead("Row", 1, () => cell.Draw(canvas, room), cell.Rows);
        }
        else
        {
            canvas.TaggedCell(cell.Rows, () => cell.Draw(canvas, room));
        }
    }

    private static void DrawRuleAbove(
        PageCanvas canvas,
        SheetRow row,
        double[] lefts,
        double right,
        double y,
        int[] open,
        bool isFirst
    )
    {
        if (isFirst)
        {
            return;
        }

        canvas.Artifact(() =>
        {
            // A cell that reaches over the line interrupts it.
            for (var i = 0; i < lefts.Length; i++)
            {
                if (open[i] <= 0)
                {
                    canvas.Line(
                        lefts[i],
                        y,
                        i + 1 < lefts.Length ? lefts[i + 1] : right,
                        y,
                        row.IsHeavy ? Heavy : Thin,
                        TextStyle.Ink
                    );
                }
            }
        });
    }

    private void DrawHead(PageCanvas canvas, double[] lefts, double top, Tag table)
    {
        var right = lefts[^1] + Columns[^1].Width;
        if (HasParts)
        {
            canvas.Enter([table, new Tag("TR", isGrouping: true)]);
            for (var i = 0; i < Columns.Length; )
            {
                var count =
                    1 + Columns.Skip(i + 1).TakeWhile(column => column.Part is null).Count();
                var (x, part) = (lefts[i] + s_padding, Columns[i].Part ?? "");
                canvas.TaggedHead(
                    "Column",
                    count,
                    () => canvas.Text(part, SheetText.StrongHead, x, top + Mm(0.4))
                );
                i += count;
            }
        }

        var above = HasParts ? s_partHeight : 0;
        canvas.Enter([table, new Tag("TR", isGrouping: true)]);
        foreach (var (i, column) in Columns.Index())
        {
            var lines = HeadLines(column);
            canvas.TaggedHead(
                "Column",
                1,
                () =>
                    canvas.Lines(
                        lines,
                        HeadStyle(column),
                        lefts[i] + s_padding,
                        top + HeadHeight - Mm(0.8) - (lines.Length * SheetText.Head.Leading)
                    )
            );
        }

        canvas.Artifact(() =>
        {
            if (HasParts)
            {
                canvas.Line(lefts[0], top + above, right, top + above, Thin, TextStyle.Ink);
            }

            canvas.Line(lefts[0], top + HeadHeight, right, top + HeadHeight, Heavy, TextStyle.Ink);
        });
    }

    private static TextStyle HeadStyle(SheetColumn column) =>
        column.IsStrong ? SheetText.StrongHead : SheetText.Head;

    private static ImmutableArray<string> HeadLines(SheetColumn column) =>
        LineBreaking.Break(column.Head, HeadStyle(column), column.Width - s_padding);
}

using System.Collections.Immutable;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>A column of text lines at a fixed place, in its own structure element.</summary>
/// <param name="X">Left edge in points.</param>
/// <param name="Style">Font and size.</param>
/// <param name="Lines">Lines that the font can draw.</param>
/// <param name="Tag">Innermost structure element.</param>
internal sealed record LineColumn(
    double X,
    TextStyle Style,
    ImmutableArray<string> Lines,
    Tag Tag
);

/// <summary>Makes pieces, a line each, from columns of lines that stand side by side on the same baselines.</summary>
internal static class LineColumns
{
    /// <summary>
    /// A page may end after any line but the first and the last but one. The first line can carry a mark in front.
    /// </summary>
    public static ImmutableArray<Piece> Pieces(
        ImmutableArray<LineColumn> columns,
        double spaceBefore,
        ImmutableArray<Tag> tags,
        Action<PageCanvas, double>? mark = null
    )
    {
        var count = columns.Max(c => c.Lines.Length);
        var leading = columns.Max(c => c.Style.Leading);
        var baseline = columns.Max(c => c.Style.Ascent);
        var pieces = ImmutableArray.CreateBuilder<Piece>(count);
        for (var i = 0; i < count; i++)
        {
            var line = i;
            pieces.Add(
                new Piece(
                    leading,
                    i == 0 ? spaceBefore : 0,
                    tags,
                    (canvas, top) =>
                    {
                        if (line == 0)
                        {
                            mark?.Invoke(canvas, top);
                        }

                        foreach (var column in columns.Where(c => line < c.Lines.Length))
                        {
                            canvas.Enter(tags.Add(column.Tag));
                            DrawLine(canvas, column, line, top + baseline - column.Style.Ascent);
                        }
                    }
                )
                {
                    HoldNext = i < count - 1 && (i == 0 || i == count - 2) ? Hold.Firm : Hold.None,
                }
            );
        }

        return pieces.MoveToImmutable();
    }

    private static void DrawLine(PageCanvas canvas, LineColumn column, int line, double top)
    {
        // A space at the end of a broken line keeps its last word apart from the next line in extracted text.
        var last = line == column.Lines.Length - 1;
        canvas.Text(column.Lines[line] + (last ? "" : " "), column.Style, column.X, top);
    }
}

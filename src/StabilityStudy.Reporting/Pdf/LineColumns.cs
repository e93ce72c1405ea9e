namespace StabilityStudy.Reporting.Pdf;

/// <summary>A column of text lines at a fixed place, in its own structure element.</summary>
/// <param name="X">Left edge in points.</param>
/// <param name="Style">Font and size.</param>
/// <param name="Lines">Lines that the font can draw.</param>
/// <param name="Tag">Innermost structure element.</param>
internal sealed record LineColumn(double X, TextStyle Style, ImmutableArray<string> Lines, Tag Tag);

/// <summary>Makes pieces from columns of lines that stand side by side on the same baselines.</summary>
internal static class LineColumns
{
    // Columns side by side are read one after the other, so short ones stay on one page as a single piece.
    private const int MostLinesInOnePiece = 8;

    /// <summary>
    /// A single column becomes a piece a line; a page may end after any line but the first and the last but one.
    /// Columns side by side start with one piece, which holds all of the shorter ones; what remains of the longest
    /// follows a piece a line. The first line can carry a mark in front.
    /// </summary>
    public static ImmutableArray<Piece> Pieces(
        ImmutableArray<LineColumn> columns,
        double spaceBefore,
        ImmutableArray<Tag> tags,
        Action<PageCanvas, double>? mark = null
    )
    {
        var ordered = columns.OrderBy(c => c.Lines.Length).ToImmutableArray();
        var count = ordered[^1].Lines.Length;
        var start = FirstPiece(ordered);
        var layout = new LineLayout(start < count ? ordered : columns, tags);
        var rest = tags.Add(ordered[^1].Tag);
        var pieces = ImmutableArray.CreateBuilder<Piece>(1 + count - start);
        pieces.Add(
            new Piece(
                start * layout.Leading,
                spaceBefore,
                columns.Length == 1 ? rest : tags,
                (canvas, top) =>
                {
                    mark?.Invoke(canvas, top);
                    layout.Draw(canvas, top, 0, start);
                }
            )
            {
                HoldNext = start < count ? Hold.Firm : Hold.None,
            }
        );
        for (var i = start; i < count; i++)
        {
            var line = i;
            pieces.Add(
                new Piece(
                    layout.Leading,
                    0,
                    rest,
                    (canvas, top) => layout.Draw(canvas, top, line, line + 1)
                )
                {
                    HoldNext = i == count - 2 ? Hold.Firm : Hold.None,
                }
            );
        }

        return pieces.MoveToImmutable();
    }

    private static int FirstPiece(ImmutableArray<LineColumn> ordered)
    {
        var longest = ordered[^1].Lines.Length;
        return ordered.Length == 1 ? 1
            : longest <= MostLinesInOnePiece ? longest
            : ordered[^2].Lines.Length;
    }

    private sealed record LineLayout(ImmutableArray<LineColumn> Columns, ImmutableArray<Tag> Tags)
    {
        public double Leading { get; } = Columns.Max(c => c.Style.Leading);

        private double Baseline { get; } = Columns.Max(c => c.Style.Ascent);

        public void Draw(PageCanvas canvas, double top, int first, int end)
        {
            foreach (var column in Columns)
            {
                var last = Math.Min(end, column.Lines.Length);
                for (var line = first; line < last; line++)
                {
                    canvas.Enter(Tags.Add(column.Tag));
                    var y = top + ((line - first) * Leading) + Baseline - column.Style.Ascent;
                    DrawLine(canvas, column, line, y);
                }
            }
        }

        private static void DrawLine(PageCanvas canvas, LineColumn column, int line, double top)
        {
            // A space at the end of a broken line keeps its last word apart from the next one in extracted text.
            var isLast = line == column.Lines.Length - 1;
            canvas.Text(column.Lines[line] + (isLast ? "" : " "), column.Style, column.X, top);
        }
    }
}

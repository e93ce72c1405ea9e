namespace StabilityStudy.Reporting.Pdf;

/// <summary>Where the columns of a table stand and how their texts are set.</summary>
/// <param name="Lefts">Left edge of each column in points.</param>
/// <param name="Widths">Width of each column, padding included.</param>
/// <param name="Style">Text of the cells.</param>
/// <param name="RowPadding">Distance of a row's text to the rule above and below it.</param>
internal sealed record TableColumns(
    ImmutableArray<double> Lefts,
    ImmutableArray<double> Widths,
    TextStyle Style,
    double RowPadding
)
{
    /// <summary>Distance of a text to the edge of its column.</summary>
    public const double Padding = 3;

    /// <summary>Room for a shape and its distance to the text.</summary>
    public double ShapeWidth => Style.Size + 3;

    /// <summary>
    /// Shares the width of the page among the columns as the model asks, but gives each column the room of its
    /// widest word as long as there is room.
    /// </summary>
    /// <param name="table">The table.</param>
    /// <param name="frame">The page.</param>
    /// <param name="isClose">Whether its rows stand closer, as in the appendix.</param>
    public static TableColumns Of(Table table, PageFrame frame, bool isClose)
    {
        var style =
            table.Columns.Length > 10 ? TextStyle.LookedUp with { Size = 7, Leading = 9.4 }
            : isClose || table.Columns.Length > 8 ? TextStyle.LookedUp with { Leading = 9.4 }
            : TextStyle.Caption;
        var least = table.Columns.Select((_, i) => WidestWord(table, i, style)).ToArray();
        var widths = Shared(
            [.. table.Columns.Select(c => c.RelativeWidth)],
            least,
            frame.ContentWidth
        );
        var lefts = ImmutableArray.CreateBuilder<double>(widths.Length);
        var left = frame.Left;
        foreach (var width in widths)
        {
            lefts.Add(left);
            left += width;
        }

        return new TableColumns(lefts.MoveToImmutable(), widths, style, isClose ? 0.5 : 1.6);
    }

    /// <summary>Width for the text of a cell.</summary>
    public double TextWidth(int column, VerdictShape? shape) =>
        Math.Max(1, Widths[column] - (2 * Padding) - (shape is null ? 0 : ShapeWidth));

    private static double WidestWord(Table table, int column, TextStyle style)
    {
        var strong = style with { Face = TextStyle.Strong.Face };
        var head = LineBreaking.WidestWord(table.Columns[column].Header, strong);
        var cells = table
            .Rows.Where(r => r.Kind == RowKind.Data)
            .Select(r => r.Cells[column])
            .Select(c =>
                LineBreaking.WidestWord(c.Text, c.Emphasis == Emphasis.Strong ? strong : style)
                + (c.Shape is null ? 0 : style.Size + 3)
            );
        // A hundredth of a point keeps a word that fills its column exactly from being broken by rounding.
        return cells.Append(head).Max() + (2 * Padding) + 0.01;
    }

    private static ImmutableArray<double> Shared(double[] shares, double[] least, double total)
    {
        if (least.Sum() > total)
        {
            // Not every word fits: no column gets more than a fair part before the short ones have enough.
            var fair = FairLimit(least, total);
            return [.. least.Select(w => Math.Min(w, fair))];
        }

        var widths = new double[shares.Length];
        var narrow = new bool[shares.Length];
        bool changed;
        do
        {
            changed = false;
            var room = total - least.Where((_, i) => narrow[i]).Sum();
            var sum = shares.Where((_, i) => !narrow[i]).Sum();
            for (var i = 0; i < shares.Length; i++)
            {
                widths[i] = narrow[i] ? least[i] : room * shares[i] / sum;
                if (widths[i] < least[i])
                {
                    narrow[i] = changed = true;
                }
            }
        } while (changed);

        return [.. widths];
    }

    private static double FairLimit(double[] least, double total)
    {
        var room = total;
        var left = least.Length;
        foreach (var width in least.Order())
        {
            if (width * left > room)
            {
                break;
            }

            room -= width;
            left--;
        }

        return room / Math.Max(1, left);
    }
}

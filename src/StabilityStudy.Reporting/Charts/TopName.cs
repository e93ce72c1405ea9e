namespace StabilityStudy.Reporting.Charts;

/// <summary>The name of a vertical line or of a part of the axis, written above the frame.</summary>
/// <param name="Text">The name.</param>
/// <param name="Middle">Middle of the text in points from the chart's left edge.</param>
internal sealed record TopName(string Text, double Middle)
{
    private const double Gap = 4;

    /// <summary>Names in rows in which none touches another, the first row just above the frame.</summary>
    public static ImmutableArray<ImmutableArray<TopName>> Rows(
        Chart chart,
        double left,
        double frameWidth
    )
    {
        var rows = new List<List<TopName>>();
        var named = chart
            .Layers.Select(layer => layer.Name)
            .OfType<LayerName>()
            .Where(item =>
                item.Place == NamePlace.Top
                && chart.X.Holds(item.Value)
                && IsShort(item.Text, frameWidth)
            )
            .OrderBy(item => item.Value);
        foreach (var (_, value, text) in named)
        {
            var share = (value - chart.X.Minimum) / (chart.X.Maximum - chart.X.Minimum);
            var half = ChartStyle.Name.Width(text) / 2;
            var middle = Math.Min(left + (share * frameWidth), left + frameWidth - half);
            var name = new TopName(text, Math.Max(middle, half));
            var row = rows.Find(r => name.Middle - half > r[^1].RightEnd + Gap);
            if (row is null)
            {
                rows.Add(row = []);
            }

            row.Add(name);
        }

        return [.. rows.Select(r => r.ToImmutableArray())];
    }

    /// <summary>Whether a name may stand above the frame; a longer one goes into the legend.</summary>
    public static bool IsShort(string text, double frameWidth) =>
        ChartStyle.Name.Width(text) <= frameWidth * 0.7;

    private double RightEnd => Middle + (ChartStyle.Name.Width(Text) / 2);
}

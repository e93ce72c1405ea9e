namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>Figures of one kind side by side, with one key for all of them.</summary>
internal static class FigureRows
{
    private const int MostAcross = 4;

    /// <summary>Figures with their caption: what they show, and what their signs mean.</summary>
    /// <param name="finding">What a reader should see.</param>
    /// <param name="text">What is drawn; may be empty.</param>
    /// <param name="charts">The figures; none give nothing.</param>
    /// <param name="most">How many at most stand in a row.</param>
    public static IEnumerable<Block> Captioned(
        string finding,
        string text,
        ImmutableArray<ChartBlock> charts,
        int most = MostAcross
    ) =>
        charts.IsEmpty
            ? []
            : [new KeyMessage(finding, text) { IsCaption = true }, .. Across(charts, most)];

    /// <summary>What the lines and signs of figures side by side mean, once for all of them.</summary>
    public static string KeyOf(ImmutableArray<ChartBlock> charts) =>
        charts.IsEmpty ? "" : TradeWords.Capital(string.Join("; ", SignsOf(charts))) + ".";

    public static IEnumerable<string> SignsOf(ImmutableArray<ChartBlock> charts) =>
        charts
            .SelectMany(chart => chart.Chart.Layers)
            .Where(layer => layer.Legend is not null)
            .Select(layer => $"{SignOf(layer)}: {layer.Legend}")
            .Distinct();

    private static string SignOf(ChartLayer layer) =>
        layer switch
        {
            BandLayer => "shaded",
            ReferenceLine line => $"{Of(line.Weight)}{Of(line.Dash)}",
            LineLayer line => $"{Of(line.Weight)}{Of(line.Dash)}",
            PointLayer points => Of(points.Marker),
            IntervalLayer => "bars",
            TrajectoriesLayer => "thin lines",
            _ => "sign",
        };

    private static string Of(LineWeight weight) => weight == LineWeight.Heavy ? "heavy " : "";

    private static string Of(DashStyle dash) =>
        dash switch
        {
            DashStyle.Dashed => "dashes",
            DashStyle.LongDashed => "long dashes",
            DashStyle.Dotted => "dots",
            DashStyle.DashDot => "dashes and dots",
            DashStyle.Solid => "line",
        };

    private static string Of(MarkerShape marker) =>
        marker switch
        {
            MarkerShape.OpenCircle or MarkerShape.FilledCircle => "circles",
            MarkerShape.OpenSquare or MarkerShape.FilledSquare => "squares",
            MarkerShape.OpenTriangle or MarkerShape.FilledTriangle => "triangles",
            MarkerShape.OpenDiamond or MarkerShape.FilledDiamond => "diamonds",
            MarkerShape.Cross => "crosses",
        };

    /// <summary>Figures side by side, whose key stands once before them.</summary>
    /// <param name="charts">The figures.</param>
    /// <param name="most">How many at most stand in a row.</param>
    private static IEnumerable<Block> Across(ImmutableArray<ChartBlock> charts, int most) =>
        charts
            .Select(WithoutKey)
            .Chunk(EvenRows.Length(charts.Length, most))
            .Select(row => row.Length == 1 ? (Block)row[0] : new ChartRow([.. row]));

    private static ChartBlock WithoutKey(ChartBlock chart) =>
        chart with
        {
            Chart = new Chart(
                chart.Chart.Title,
                chart.Chart.X,
                chart.Chart.Y,
                [.. chart.Chart.Layers.Select(layer => layer with { Legend = null })]
            ),
        };
}

using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The chances of a row over its time points, a line for each supposed change.</summary>
internal static class PlanFigure
{
    private const double HeightMillimeters = 70;

    private static readonly ImmutableArray<int> s_ticks = [0, 20, 50, 80, 100];

    private static readonly ImmutableArray<(
        double Share,
        string Name,
        MarkerShape Marker,
        DashStyle Dash
    )> s_lines =
    [
        (0, "if nothing changes", MarkerShape.OpenCircle, DashStyle.Solid),
        (0.5, "half as published", MarkerShape.OpenTriangle, DashStyle.Dashed),
        (1, "as published", MarkerShape.FilledSquare, DashStyle.Dotted),
    ];

    /// <summary>The figure; null where nothing of the row is simulated.</summary>
    public static ChartBlock? Of(StudyPlan plan, PlannedRow row)
    {
        var points = row.TimePoints;
        if (points.All(point => point.Chances.IsEmpty))
        {
            return null;
        }

        var name = ChanceTable.Name(plan, row);
        return new(
            new Chart(
                $"{name}: chance of “supported”",
                new Axis(
                    "Tested after",
                    0,
                    points.Length + 1,
                    [.. points.Select((point, i) => new Tick(i + 1, point.TimePoint.ToString()))]
                ),
                new Axis(
                    "Chance, %",
                    0,
                    100,
                    [.. s_ticks.Select(tick => new Tick(tick, NumberText.Count(tick)))]
                ),
                [
                    new ReferenceLine(
                        LineDirection.Horizontal,
                        80,
                        DashStyle.LongDashed,
                        LineWeight.Thin,
                        "likely",
                        null
                    ),
                    .. s_lines.SelectMany(line => Layers(points, line)),
                ]
            ),
            HeightMillimeters,
            string.Join(
                " ",
                points.SelectMany(point =>
                    point.Chances.Select(chance =>
                        $"{point.TimePoint}, {s_lines.Single(line => line.Share == chance.ShareOfExpected).Name}: {ChanceWords.Percent(chance.Together.Probability)}."
                    )
                )
            ),
            ""
        );
    }

    private static IEnumerable<ChartLayer> Layers(
        ImmutableArray<PlannedTimePoint> points,
        (double Share, string Name, MarkerShape Marker, DashStyle Dash) line
    )
    {
        ImmutableArray<(double X, double Y)> at =
        [
            .. points
                .Select((point, i) => (Point: point, X: i + 1.0))
                .SelectMany(item =>
                    item.Point.Chances.Where(chance => chance.ShareOfExpected == line.Share)
                        .Select(chance => (item.X, 100 * chance.Together.Probability))
                ),
        ];
        return at.IsEmpty
            ? []
            :
            [
                new LineLayer(
                    [.. at.Select(item => new Position(item.X, item.Y))],
                    line.Dash,
                    LineWeight.Medium,
                    null,
                    null
                ),
                new PointLayer(
                    [.. at.Select(item => new ChartPoint(item.X, item.Y))],
                    line.Marker,
                    line.Name
                ),
            ];
    }
}

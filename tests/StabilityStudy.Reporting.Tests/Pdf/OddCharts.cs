using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>Charts of shapes that a careless layout breaks on.</summary>
internal static class OddCharts
{
    private const string LongText = "Activated partial thromboplastin time, delayed minus baseline";

    public static ImmutableArray<Block> All =>
        [
            Alone(new Chart("", Plain(), Plain(), []), 20, "empty chart"),
            Alone(CrowdedNames(), 70, "crowded names"),
            Alone(NamedPoints(), 60, "named points"),
            Alone(new Chart("Tall", Plain(), Plain(), []), 900, "chart higher than a page"),
            new ChartRow([
                Alone(Long(), 60, "first of three"),
                Alone(Long(), 45, "second of three"),
                Alone(Long(), 60, "third of three"),
            ]),
            new ChartRow([
                Alone(CrowdedTicks(), 40, "ticks"),
                Alone(AllMarks(), 40, "all marks ≤ −5 検"),
            ]),
        ];

    private static ChartBlock Alone(Chart chart, double height, string alternative) =>
        new(chart, height, alternative, "Figure: " + alternative + ".");

    private static Axis Plain() => DemoCharts.Ticked("", 0, 10, 5);

    private static Chart CrowdedNames() =>
        new(
            "Twelve lines that end close together",
            Plain(),
            Plain(),
            [
                .. Enumerable
                    .Range(0, 12)
                    .Select(i =>
                        (ChartLayer)
                            new ReferenceLine(
                                LineDirection.Horizontal,
                                4 + (0.1 * i),
                                (DashStyle)(i % 4),
                                (LineWeight)(i % 3),
                                "name " + (char)('A' + i),
                                "legend " + (char)('A' + i)
                            )
                    ),
                .. Enumerable
                    .Range(0, 6)
                    .Select(i =>
                        (ChartLayer)
                            new ReferenceLine(
                                LineDirection.Vertical,
                                9 + (0.1 * i),
                                DashStyle.Dotted,
                                LineWeight.Thin,
                                "upright " + (char)('A' + i),
                                null
                            )
                    ),
                new LineLayer(
                    [new(0, 0), new(10, 50)],
                    DashStyle.Solid,
                    LineWeight.Heavy,
                    "leaves the frame",
                    null
                ),
            ]
        );

    private static Chart NamedPoints() =>
        new(
            "Named points at corners and in a crowd",
            DemoCharts.Ticked("x", 0, 10, 2),
            DemoCharts.Ticked("y", 0, 10, 2),
            [
                new PointLayer(
                    [
                        new(0, 0, "corner-1"),
                        new(10, 10, "corner-2"),
                        new(0, 10, "corner-3"),
                        new(10, 0, "corner-4"),
                        new(5, 5, "middle"),
                        new(5.3, 5.1),
                        new(4.7, 5.1),
                        new(5, 6.5, "above"),
                    ],
                    MarkerShape.FilledCircle,
                    null
                ),
            ]
        );

    private static Chart Long() =>
        new(
            LongText + ": " + LongText,
            new Axis(
                LongText,
                0,
                1_000_000,
                [new(0, "0"), new(500_000, "500 000"), new(1_000_000, "1 000 000")]
            ),
            new Axis(LongText, 0, 1_000_000, [new(0, "0"), new(1_000_000, "1 000 000 s")]),
            [
                new ReferenceLine(
                    LineDirection.Horizontal,
                    1,
                    DashStyle.Solid,
                    LineWeight.Thin,
                    LongText,
                    LongText
                ),
                new PointLayer([new(5, 7)], MarkerShape.Cross, LongText),
            ]
        );

    private static Chart CrowdedTicks() =>
        new(
            "Ticks too close for their labels",
            new Axis(
                "x",
                0,
                100,
                [
                    .. Enumerable
                        .Range(0, 101)
                        .Select(i => new Tick(i, "" + (char)('A' + (i % 26)) + "-tick")),
                ]
            ),
            DemoCharts.Ticked("検体 □ µ", 0, 10, 5),
            []
        );

    private static Chart AllMarks() =>
        new(
            "Every mark",
            Plain(),
            Plain(),
            [
                new BandLayer([new(0, -5, 2), new(10, 3, 20)], BandFill.LightGray, "gray"),
                new BandLayer([new(0, -5, 5), new(10, -5, 8)], BandFill.Hatched, "hatched"),
                new BandLayer([], BandFill.Hatched, null),
                new TrajectoriesLayer(
                    [
                        [new(0, 1), new(10, 8)],
                        [],
                    ],
                    "lines"
                ),
                new LineLayer([], DashStyle.Solid, LineWeight.Thin, null, null),
                new IntervalLayer([new(5, -9, 5, 19)], MarkerShape.OpenDiamond, "interval"),
                .. Enum.GetValues<MarkerShape>()
                    .Select(m =>
                        (ChartLayer)
                            new PointLayer(
                                [new((int)m + 0.5, 5)],
                                m,
                                "marker " + (char)('a' + (int)m)
                            )
                    ),
            ]
        );
}

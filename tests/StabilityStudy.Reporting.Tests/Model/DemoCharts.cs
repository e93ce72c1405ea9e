using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Model;

/// <summary>Charts of the invented study.</summary>
internal static class DemoCharts
{
    /// <summary>Repeatable scatter in [0, 1): the fractional part of a sine.</summary>
    public static double Noise(int index, int stream)
    {
        var value = Math.Sin((index * 12.9898) + (stream * 78.233)) * 43758.5453;
        return value - Math.Floor(value);
    }

    public static Axis Ticked(string label, double minimum, double maximum, double step)
    {
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var i = (int)Math.Ceiling(minimum / step); i * step <= maximum; i++)
        {
            var text = (i * step).ToString("0.###", CultureInfo.InvariantCulture);
            ticks.Add(new Tick(i * step, text.Replace('-', '−')));
        }

        return new Axis(label, minimum, maximum, ticks.ToImmutable());
    }

    public static ChartBlock Drift(string group, double percentPerHour, int stream)
    {
        double[] hours = [0, 6, 8, 12];
        var lines = Enumerable
            .Range(0, 30)
            .Select(i =>
            {
                var own = percentPerHour + (0.5 * (Noise(i, stream) - 0.5));
                return hours.Select(h => new Position(h, own * h)).ToImmutableArray();
            })
            .ToImmutableArray();
        var means = hours
            .Skip(1)
            .Select(h => new ChartInterval(
                h,
                (percentPerHour * h) - 0.4 - (0.08 * h),
                percentPerHour * h,
                (percentPerHour * h) + 0.4 + (0.08 * h)
            ))
            .ToImmutableArray();
        var chart = new Chart(
            group,
            new Axis(
                "Delay since collection, h",
                0,
                13,
                [new(0, "0"), new(4, "4"), new(6, "6"), new(8, "8"), new(12, "12")]
            ),
            Ticked("Change of aPTT, %", -20, 20, 10),
            [
                new TrajectoriesLayer(lines, "one specimen"),
                new ReferenceLine(
                    LineDirection.Horizontal,
                    0,
                    DashStyle.Solid,
                    LineWeight.Thin,
                    null,
                    null
                ),
                new ReferenceLine(
                    LineDirection.Horizontal,
                    7.5,
                    DashStyle.Dashed,
                    LineWeight.Medium,
                    "allowable bias",
                    null
                ),
                new ReferenceLine(
                    LineDirection.Horizontal,
                    -7.5,
                    DashStyle.Dashed,
                    LineWeight.Medium,
                    "allowable bias",
                    null
                ),
                new ReferenceLine(
                    LineDirection.Vertical,
                    4,
                    DashStyle.Dotted,
                    LineWeight.Medium,
                    "standard window",
                    null
                ),
                new IntervalLayer(means, MarkerShape.FilledCircle, "mean with 90 % interval"),
            ]
        );
        return new ChartBlock(
            chart,
            50,
            "Change of aPTT in percent against delay in hours, " + group + ".",
            ""
        );
    }

    public static ChartBlock Difference()
    {
        var points = Enumerable
            .Range(0, 60)
            .Select(i =>
            {
                var x = 26 + (80 * Noise(i, 3) * Noise(i, 4));
                var y = (0.03 * x) + ((Noise(i, 5) - 0.5) * 0.11 * x);
                return i == 11
                    ? new ChartPoint(84, 15.2, "S-0417")
                    : new ChartPoint(x, y, i == 30 ? "S-0430" : null);
            })
            .ToImmutableArray();
        BandPoint[] funnel = [new(20, -3, 3), new(110, -16.5, 16.5)];
        var chart = new Chart(
            "Difference against mean, 12 h",
            Ticked("Mean of baseline and delayed aPTT, s", 20, 110, 20),
            Ticked("Delayed − baseline, s", -20, 20, 10),
            [
                new BandLayer([.. funnel], BandFill.Hatched, "allowable difference ±15 %"),
                new BandLayer([new(20, 5.4, 7.6), new(110, 5.4, 7.6)], BandFill.LightGray, null),
                new BandLayer(
                    [new(20, -4.2, -2.0), new(110, -4.2, -2.0)],
                    BandFill.LightGray,
                    null
                ),
                new BandLayer(
                    [new(20, 1.2, 2.3), new(110, 1.2, 2.3)],
                    BandFill.LightGray,
                    "95 % interval of each line"
                ),
                Level(0, DashStyle.Solid, LineWeight.Thin, null),
                Level(1.7, DashStyle.Solid, LineWeight.Heavy, "bias +1.7 s"),
                Level(6.5, DashStyle.Dashed, LineWeight.Medium, "upper limit of agreement +6.5 s"),
                Level(-3.1, DashStyle.Dashed, LineWeight.Medium, "lower limit of agreement −3.1 s"),
                new PointLayer(points, MarkerShape.OpenCircle, "specimen"),
                new PointLayer(
                    [new ChartPoint(84, 15.2)],
                    MarkerShape.FilledDiamond,
                    "outside the allowable difference"
                ),
            ]
        );
        return new ChartBlock(
            chart,
            78,
            "Differences between delayed and baseline aPTT against their means; one of 60 specimens, S-0417, lies outside ±15 %.",
            "Figure 2. The bias is +1.7 s. Specimen S-0417 changed by more than is allowable."
        );
    }

    public static ChartBlock Groups() =>
        new(
            new Chart(
                "Mean change at 12 h",
                new Axis("Patient group", 0, 2, []),
                Ticked("Change, %", -20, 20, 10),
                [
                    new NamedRange(0, 1, "No anticoagulant"),
                    new NamedRange(1, 2, "Unfractionated heparin"),
                    new IntervalLayer(
                        [new(0.5, 2.2, 2.9, 3.6), new(1.5, -13.9, -12.2, -10.5)],
                        MarkerShape.FilledCircle,
                        "mean change, 90 % interval"
                    ),
                ]
            ),
            78,
            "Mean changes at 12 h of both groups: +2.9 % and −12.2 %.",
            "Figure 4. Mean changes at 12 h."
        );

    public static ChartBlock Regression()
    {
        var points = Enumerable
            .Range(0, 60)
            .Select(i =>
            {
                var x = 26 + (80 * Noise(i, 3) * Noise(i, 4));
                return new ChartPoint(x, (x * 1.03) + ((Noise(i, 5) - 0.5) * 0.1 * x));
            })
            .ToImmutableArray();
        var band = Enumerable
            .Range(0, 19)
            .Select(i => 20 + (5.0 * i))
            .Select(x => new BandPoint(
                x,
                (1.03 * x) - 1 - (0.0012 * (x - 45) * (x - 45)),
                (1.03 * x) + 1 + (0.0012 * (x - 45) * (x - 45))
            ))
            .ToImmutableArray();
        var chart = new Chart(
            "Deming regression, 12 h",
            Ticked("Baseline aPTT, s", 20, 110, 20),
            Ticked("Delayed aPTT, s", 20, 120, 20),
            [
                new BandLayer(band, BandFill.LightGray, "95 % band"),
                new LineLayer(
                    [new(20, 20), new(110, 110)],
                    DashStyle.Dotted,
                    LineWeight.Medium,
                    "identity",
                    null
                ),
                new LineLayer(
                    [new(20, 20.6), new(110, 113.3)],
                    DashStyle.Solid,
                    LineWeight.Heavy,
                    "fit",
                    null
                ),
                new PointLayer(points, MarkerShape.OpenCircle, "specimen"),
                new ReferenceLine(
                    LineDirection.Vertical,
                    40,
                    DashStyle.DashDot,
                    LineWeight.Thin,
                    "40 s",
                    null
                ),
                new ReferenceLine(
                    LineDirection.Vertical,
                    60,
                    DashStyle.DashDot,
                    LineWeight.Thin,
                    "60 s",
                    "decision level"
                ),
            ]
        );
        return new ChartBlock(
            chart,
            78,
            "Delayed against baseline aPTT with the fitted line close to identity.",
            "Figure 3. Slope 1.03, intercept 0.0 s; decision levels 40 s and 60 s."
        );
    }

    private static ReferenceLine Level(
        double value,
        DashStyle dash,
        LineWeight weight,
        string? label
    ) => new(LineDirection.Horizontal, value, dash, weight, label, null);
}

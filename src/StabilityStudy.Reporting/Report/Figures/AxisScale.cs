namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>Axes with round ticks (1, 2 or 5 times a power of ten) that hold all values.</summary>
internal static class AxisScale
{
    private const int MostTicks = 6;
    private const double Margin = 0.04;

    /// <summary>How far beyond the other values, in parts of their range, an outlier still belongs on the axis.</summary>
    private const double OutlierShare = 0.5;

    /// <summary>An axis for values; a constant gets room on both sides.</summary>
    public static Axis For(string label, IEnumerable<double> values)
    {
        var all = values.DefaultIfEmpty(0).ToArray();
        var (lowest, highest) = (all.Min(), all.Max());
        var span = highest > lowest ? highest - lowest : Math.Max(1, Math.Abs(highest));
        return Between(label, lowest - Margin * span, highest + Margin * span);
    }

    /// <summary>An axis for values and for those outliers that do not press them flat; the others lie beyond it.</summary>
    public static Axis ForMost(
        string label,
        IEnumerable<double> values,
        IEnumerable<double> outliers
    )
    {
        var all = values.ToArray();
        var (lowest, highest) = (all.Min(), all.Max());
        var room = OutlierShare * (highest - lowest);
        return For(
            label,
            all.Concat(outliers.Where(value => value >= lowest - room && value <= highest + room))
        );
    }

    /// <summary>An axis with given ends and round ticks between them.</summary>
    public static Axis Between(string label, double minimum, double maximum)
    {
        var step = StepFor(maximum - minimum);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step)));
        var first = (long)Math.Ceiling(minimum / step);
        var last = (long)Math.Floor(maximum / step);
        return new Axis(
            label,
            minimum,
            maximum,
            [
                .. Enumerable
                    .Range(0, (int)(last - first + 1))
                    .Select(i => (first + i) * step)
                    .Where(value => value >= minimum && value <= maximum)
                    .Select(value => new Tick(value, NumberText.Fixed(value, decimals))),
            ]
        );
    }

    /// <summary>An axis of time since collection or thawing, in hours, with a tick at each time point; long times are labeled in days.</summary>
    public static Axis Time(double longestHours, ImmutableArray<double> ticks, string start)
    {
        var inDays = DurationText.IsInDays(longestHours);
        return new(
            $"{(inDays ? "Days" : "Hours")} since {start}",
            0,
            longestHours,
            [
                .. ticks
                    .Where(hours => hours <= longestHours)
                    .Select(hours => new Tick(
                        hours,
                        NumberText.Plain((decimal)(inDays ? hours / 24 : hours))
                    )),
            ]
        );
    }

    private static double StepFor(double span)
    {
        var magnitude = Math.Pow(10, Math.Floor(Math.Log10(span / MostTicks)));
        return new[] { 1.0, 2, 5, 10 }
            .Select(factor => factor * magnitude)
            .First(step => span / step <= MostTicks);
    }
}

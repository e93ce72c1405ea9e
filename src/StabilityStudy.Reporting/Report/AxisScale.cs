using System.Collections.Immutable;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>Axes with round ticks (1, 2 or 5 times a power of ten) that hold all values.</summary>
internal static class AxisScale
{
    private const int MostTicks = 6;
    private const double Margin = 0.04;

    /// <summary>An axis for values; a constant gets room on both sides.</summary>
    public static Axis For(string label, IEnumerable<double> values)
    {
        var all = values.DefaultIfEmpty(0).ToArray();
        var (lowest, highest) = (all.Min(), all.Max());
        var span = highest > lowest ? highest - lowest : Math.Max(1, Math.Abs(highest));
        return Between(label, lowest - Margin * span, highest + Margin * span);
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

    /// <summary>An axis of hours since collection with a tick at each time point.</summary>
    public static Axis Hours(double longest, ImmutableArray<double> ticks) =>
        new(
            "Hours since collection",
            0,
            longest,
            [
                .. ticks
                    .Where(hours => hours <= longest)
                    .Select(hours => new Tick(hours, NumberText.Plain((decimal)hours))),
            ]
        );

    private static double StepFor(double span)
    {
        var magnitude = Math.Pow(10, Math.Floor(Math.Log10(span / MostTicks)));
        return new[] { 1.0, 2, 5, 10 }
            .Select(factor => factor * magnitude)
            .First(step => span / step <= MostTicks);
    }
}

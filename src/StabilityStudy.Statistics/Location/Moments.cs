using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Location;

/// <summary>Mean and standard deviation (divisor n − 1) of at least two numbers, with the extremes.</summary>
/// <remarks>
/// Compensated sum for the mean (Neumaier 1974), corrected two-pass sum of squares (Chan, Golub and LeVeque 1983,
/// The American Statistician 37:242–247; both cited from memory). Deviations are divided by a power of two near the
/// largest of them, which is exact, so that their squares neither overflow nor vanish.
/// Whether the values are all the same is decided by comparing them, never by the size of a computed spread.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Moments(
    int Count,
    double Mean,
    double StandardDeviation,
    double Minimum,
    double Maximum
)
{
    /// <summary>True when the values are all the same.</summary>
    public bool IsConstant => Minimum == Maximum;

    /// <summary>Computes the moments of at least two checked numbers.</summary>
    public static Moments Of(ReadOnlySpan<double> values)
    {
        var minimum = values[0];
        var maximum = values[0];
        foreach (var value in values)
        {
            minimum = value < minimum ? value : minimum;
            maximum = value > maximum ? value : maximum;
        }

        if (minimum == maximum)
        {
            return new Moments(values.Length, minimum, 0, minimum, maximum);
        }

        var mean = CompensatedSum(values) / values.Length;
        var scale = ScaleOf(Math.Max(maximum - mean, mean - minimum));
        var sum = 0.0;
        var squares = 0.0;
        foreach (var value in values)
        {
            var deviation = (value - mean) / scale;
            sum += deviation;
            squares += deviation * deviation;
        }

        var variance = (squares - (sum * sum / values.Length)) / (values.Length - 1);
        return new Moments(values.Length, mean, scale * Math.Sqrt(variance), minimum, maximum);
    }

    /// <summary>The mean of at least one checked number.</summary>
    public static double MeanOf(ReadOnlySpan<double> values) =>
        values.Length == 1 ? values[0] : Of(values).Mean;

    /// <summary>The power of two at or below a positive number.</summary>
    public static double ScaleOf(double magnitude) => Math.ScaleB(1, Math.ILogB(magnitude));

    private static double CompensatedSum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        var lost = 0.0;
        foreach (var value in values)
        {
            var next = sum + value;
            lost += Math.Abs(sum) >= Math.Abs(value) ? sum - next + value : value - next + sum;
            sum = next;
        }

        return sum + lost;
    }
}

using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Location;

/// <summary>How a percentile is read between ordered values, by the numbers of Hyndman and Fan.</summary>
public enum PercentileType
{
    /// <summary>Type 6: at p·(n + 1), as Weibull plots do.</summary>
    Type6,

    /// <summary>Type 7: at p·(n − 1) + 1, as most spreadsheets do.</summary>
    Type7,

    /// <summary>Type 8: at p·(n + 1/3) + 1/3, about the median of where the percentile may lie, whatever the distribution.</summary>
    Type8,
}

/// <summary>The range between two percentiles of the values, with no assumption on their distribution.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Lower">The percentile at (1 − coverage)/2.</param>
/// <param name="Upper">The percentile at (1 + coverage)/2.</param>
/// <param name="Coverage">Share of the values between, such as 0.95.</param>
/// <param name="Type">How the percentiles are read.</param>
public sealed record PercentileRange(
    int Count,
    double Lower,
    double Upper,
    double Coverage,
    PercentileType Type
);

/// <summary>
/// Percentiles by a named type. With h the place of the type, the value lies between the ordered values at ⌊h⌋ and ⌊h⌋ + 1, in proportion.
/// </summary>
/// <remarks>
/// Source: Hyndman and Fan, The American Statistician 50 (1996) 361–365 (from memory; checked against R). A percentile that lies beyond the first or last
/// value of the type is refused instead of being called that value: 2.5 and 97.5 % need 39 values by type 6.
/// </remarks>
public static class Percentile
{
    /// <summary>Rounding of the place itself must not refuse a percentile that lies on the first value.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>The range between two percentiles.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to. Ties and zeros are ordinary values.</param>
    /// <param name="coverage">Share of the values between the two, strictly between 0 and 1.</param>
    /// <param name="type">How percentiles are read.</param>
    /// <returns>The range; or too few values for percentiles so far out.</returns>
    /// <exception cref="ArgumentException">A value is not a number, the share is not strictly between 0 and 1, or the type is unknown.</exception>
    public static Estimate<PercentileRange> Range(
        ReadOnlySpan<double> values,
        double coverage,
        PercentileType type
    )
    {
        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(coverage, nameof(coverage));
        var tail = (1 - coverage) / 2;
        if (values.Length < 2 || Place(tail, values.Length, type) < 1 - Tolerance)
        {
            return Estimate.Refused<PercentileRange>(Refusal.TooFewForPercentiles);
        }

        var sorted = values.ToArray();
        MergeSort.Ascending(sorted.AsSpan());
        return Estimate.Of(
            new PercentileRange(
                sorted.Length,
                Of(sorted, tail, type),
                Of(sorted, 1 - tail, type),
                coverage,
                type
            )
        );
    }

    /// <summary>A percentile of sorted values; beyond the first or last value that value.</summary>
    /// <param name="sorted">At least one value, ascending.</param>
    /// <param name="share">Share of the values below, from 0 to 1.</param>
    /// <param name="type">How percentiles are read.</param>
    internal static double Of(IReadOnlyList<double> sorted, double share, PercentileType type)
    {
        var place = Math.Clamp(Place(share, sorted.Count, type), 1, sorted.Count);
        var below = Math.Min((int)place, Math.Max(sorted.Count - 1, 1));
        var above = Math.Min(below + 1, sorted.Count);
        return sorted[below - 1] + ((place - below) * (sorted[above - 1] - sorted[below - 1]));
    }

    private static double Place(double share, int n, PercentileType type) =>
        type switch
        {
            PercentileType.Type6 => share * (n + 1),
            PercentileType.Type7 => (share * (n - 1)) + 1,
            PercentileType.Type8 => (share * (n + (1.0 / 3))) + (1.0 / 3),
            _ => throw new ArgumentException("The type is unknown.", nameof(type)),
        };
}

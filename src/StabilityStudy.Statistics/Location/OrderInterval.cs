namespace StabilityStudy.Statistics.Location;

/// <summary>A location estimate with an interval between two order statistics; numbers are in the unit of the values.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Value">The point estimate.</param>
/// <param name="AchievedConfidence">The two-sided level that the interval has, at least the one asked for.</param>
/// <param name="Lower">The order statistic of rank <paramref name="LowerRank"/>.</param>
/// <param name="Upper">The order statistic of the same rank counted from the top.</param>
/// <param name="LowerRank">Rank of the lower end, from 1, among the ordered values or Walsh averages.</param>
public sealed record OrderInterval(
    int Count,
    double Value,
    double AchievedConfidence,
    double Lower,
    double Upper,
    int LowerRank
)
{
    /// <summary>The refusal of a sample whose extremes already have less than the wanted confidence; the level is never lowered instead.</summary>
    /// <param name="value">The point estimate, which stands without an interval.</param>
    internal static Estimate<OrderInterval> Unreachable(double value) =>
        Estimate.Refused<OrderInterval>(
            new NotComputable(Refusal.TooFewToReachConfidence, Point: new(value))
        );

    /// <summary>Checks the arguments that every interval between order statistics has; a refusal when there is no value at all.</summary>
    internal static Estimate<OrderInterval>? WhyNone(
        ReadOnlySpan<double> values,
        double confidenceLevel
    )
    {
        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        return values.IsEmpty ? Estimate.Refused<OrderInterval>(Refusal.NoneForLocation) : null;
    }
}

namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Hodges–Lehmann estimate: the median of the M = n(n + 1)/2 Walsh averages W = (x_i + x_j)/2, i ≤ j, with the interval
/// [W(k), W(M + 1 − k)], k the smallest q with P(V ≤ q) ≥ (1 − level)/2 for the signed-rank statistic V.
/// </summary>
/// <remarks>
/// Source: Hodges and Lehmann (1963), Annals of Mathematical Statistics 34:598–611; Tukey (1949); Hollander and Wolfe (1973),
/// Nonparametric Statistical Methods, sections 3.2 and 3.3 (all cited from memory). The level achieved is 1 − 2·P(V ≤ k − 1).
/// Assumptions: independent values of one distribution that is symmetric about the quantity estimated; under skewness
/// the estimate is neither the mean nor the median. Zero values are kept. Ties: the ranks are those of the
/// distribution without ties, so the achieved level is a lower bound.
/// Numerical limits: k is exact up to 1000 values; beyond, it comes from the normal approximation, with the note <see cref="AssumptionCode.ApproximateRank"/>.
/// </remarks>
public static class HodgesLehmann
{
    /// <summary>The largest number of values whose averages, n(n + 1)/2, a rank can number.</summary>
    private const int LargestRanked = 65_535;

    /// <summary>Estimate and interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// No value at all: <see cref="AssumptionCode.TooFewValues"/>. Rank k = 0 (for 95 % fewer than six values):
    /// <see cref="AssumptionCode.NoIntervalAtThisSize"/> with the value alone; the level is never lowered instead. The same beyond 65,535 values,
    /// whose averages are too many to number.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<OrderInterval> WithInterval(
        ReadOnlySpan<double> values,
        double confidenceLevel
    )
    {
        if (OrderInterval.WhyNone(values, confidenceLevel) is { } refused)
        {
            return refused;
        }

        if (values.Length > LargestRanked)
        {
            return Estimate.Refused<OrderInterval>(Refusal.TooManyAveragesToRank);
        }

        var (rank, below) = SignedRankDistribution.Rank(values.Length, (1 - confidenceLevel) / 2);
        var averages = new WalshAverages(values);
        if (rank == 0)
        {
            return OrderInterval.Unreachable(averages.Median);
        }

        var interval = new OrderInterval(
            values.Length,
            averages.Median,
            1 - (2 * below),
            averages.OfRank(rank),
            averages.OfRank(averages.Count + 1 - rank),
            rank
        );
        return values.Length > SignedRankDistribution.LargestExact
            ? Estimate.Of(interval, EstimateNote.ApproximateRank)
            : Estimate.Of(interval);
    }
}

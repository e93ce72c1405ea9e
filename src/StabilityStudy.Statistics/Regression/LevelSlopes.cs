using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Whether a change depends on the level, robust to errors of either result: D = 100·ln(y/x) on L = 100·(ln x + ln y)/2 and on 100·ln x, by least squares within clusters that share an error.
/// </summary>
/// <param name="OnLevel">Slope of D on L, percent a percent.</param>
/// <param name="OnLevelStandardError">Its standard error.</param>
/// <param name="OnLevelPValue">Its two-sided p value.</param>
/// <param name="OnBaseline">Slope of D on 100·ln x.</param>
/// <param name="OnBaselinePValue">Its two-sided p value.</param>
/// <param name="DegreesOfFreedom">n − clusters − 1, or n − 2 where every pair has a cluster of its own.</param>
/// <param name="MeanLevel">Mean of L.</param>
/// <param name="LevelStandardDeviation">SD of L over all pairs, n − 1 in the divisor.</param>
/// <param name="BaselineStandardDeviation">SD of ln x over all pairs, n − 1 in the divisor.</param>
/// <remarks>
/// Unequal spread of y and x makes the first slope positive, the error of the baseline makes the second negative, without any dependence; so either alone is found falsely, up to 0.45 and 0.09 at a nominal 0.05, and both with one sign
/// in 0.007 to 0.049. A baseline that is much less precise than the delayed result makes both negative (errors of 6 % and 1 %, SD of ln x 0.20, n 40: 0.11). D and L are centered within clusters, so that what a run adds to its results does not pass for a dependence. Assumptions: pairs independent within clusters, a relation straight in the logarithms, residuals of
/// one spread. Smallest n: clusters + 2. Source: Oldham, J Chronic Dis 15 (1962) 969–977, for the level (from memory); the rule of both slopes is our own.
/// </remarks>
public sealed record LevelSlopes(
    double OnLevel,
    double OnLevelStandardError,
    double OnLevelPValue,
    double OnBaseline,
    double OnBaselinePValue,
    double DegreesOfFreedom,
    double MeanLevel,
    double LevelStandardDeviation,
    double BaselineStandardDeviation
)
{
    /// <summary>Percent; levels closer than this differ by the rounding of their logarithms alone.</summary>
    private const double SmallestRange = 1e-10;

    /// <summary>Whether both slopes have one sign and both p values are below <paramref name="significance"/>.</summary>
    public bool Agree(double significance) =>
        Math.Sign(OnLevel) == Math.Sign(OnBaseline)
        && OnLevelPValue < significance
        && OnBaselinePValue < significance;

    /// <summary>Fits both slopes.</summary>
    /// <param name="x">First members of the pairs, above zero.</param>
    /// <param name="y">Second members, above zero, same unit and length.</param>
    /// <param name="cluster">Which pairs share an error, a number for each pair.</param>
    /// <returns>The slopes; or a value that is not above zero, too few pairs, or levels that do not vary within clusters.</returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static Estimate<LevelSlopes> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ImmutableArray<int> cluster
    )
    {
        var within = ChangesWithin.Clusters(x, y, cluster, parameters: 1);
        if (!within.TryGet(out var pairs))
        {
            return within.RefusedAs<LevelSlopes>();
        }

        var (byBaseline, byLevel, change) = (
            pairs.Centered(pairs.Baselines),
            pairs.Centered(pairs.Levels),
            pairs.Centered(pairs.Changes)
        );
        if (
            byBaseline.Max() - byBaseline.Min() < SmallestRange
            || byLevel.Max() - byLevel.Min() < SmallestRange
        )
        {
            return Estimate.Refused<LevelSlopes>(Refusal.SameBaselines);
        }

        var onLevel = Through(byLevel, change, pairs.DegreesOfFreedom);
        var onBaseline = Through(byBaseline, change, pairs.DegreesOfFreedom);
        return Estimate.Of(
            new LevelSlopes(
                onLevel.Slope,
                onLevel.StandardError,
                onLevel.PValue,
                onBaseline.Slope,
                onBaseline.PValue,
                pairs.DegreesOfFreedom,
                pairs.Levels.Average(),
                StandardDeviation(pairs.Levels),
                StandardDeviation(pairs.Baselines) / 100
            )
        );
    }

    /// <summary>Slope through the origin of centered values.</summary>
    private static (double Slope, double StandardError, double PValue) Through(
        double[] u,
        double[] v,
        int degreesOfFreedom
    )
    {
        var (squares, products) = (0.0, 0.0);
        for (var i = 0; i < u.Length; i++)
        {
            squares += u[i] * u[i];
            products += u[i] * v[i];
        }

        var slope = products / squares;
        var residuals = 0.0;
        for (var i = 0; i < u.Length; i++)
        {
            var residual = v[i] - (slope * u[i]);
            residuals += residual * residual;
        }

        var standardError = Math.Sqrt(residuals / degreesOfFreedom / squares);
        return (slope, standardError, ChangesWithin.PValue(slope, standardError, degreesOfFreedom));
    }

    private static double StandardDeviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(
            values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1)
        );
    }
}

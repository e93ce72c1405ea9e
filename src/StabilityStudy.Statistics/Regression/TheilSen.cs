namespace StabilityStudy.Statistics.Regression;

/// <summary>The line of Theil and Sen: the median of the slopes between all twos of pairs.</summary>
/// <param name="Count">Number of pairs n.</param>
/// <param name="SlopeCount">N, the number of slopes: twos with the same x have none.</param>
/// <param name="Slope">Median slope.</param>
/// <param name="SlopeLower">Lower end of the interval of the slope.</param>
/// <param name="SlopeUpper">Upper end of the interval of the slope.</param>
/// <param name="Intercept">Median of y − slope·x, in the unit of y; without an interval.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
public sealed record TheilSenFit(
    int Count,
    long SlopeCount,
    double Slope,
    double SlopeLower,
    double SlopeUpper,
    double Intercept,
    double ConfidenceLevel
);

/// <summary>
/// Theil–Sen regression. Like ordinary least squares it presumes that x is free of error, which a measured baseline is not; unlike it, it is hardly
/// moved by outliers in y. A description beside the errors-in-variables fits.
/// </summary>
public static class TheilSen
{
    private const int FewestPairs = 3;

    /// <summary>
    /// Slope: the median of (yⱼ − yᵢ)/(xⱼ − xᵢ) over all twos with different x (for an even number the arithmetic mean of the middle two). Interval: ranks M₁ and
    /// N − M₁ + 1, M₁ = (N − C)/2 rounded half up, C = z·√([n(n − 1)(2n + 5) − Σu(u − 1)(2u + 5)]/18) over the groups of u equal x (Theil 1950; Sen, J Am Stat Assoc 63 (1968)
    /// 1379–1389, equation 2.6; from memory). Ties in y are not taken off the variance, which leaves the interval rather wider. Intercept: the median of y − slope·x. Slopes are ordered
    /// exactly on whole numbers. Assumes independent pairs, a straight relation, errors in y only, of one distribution. Smallest n: 3 by rule, 5 for an interval at 95 %.
    /// </summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The line; or too few values, a constant baseline, or no interval at this size (M₁ &lt; 1), with the line alone.</returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    /// <exception cref="ArgumentException">The level is not between 0 and 1.</exception>
    public static Estimate<TheilSenFit> Fit(ExactPairs pairs, double confidenceLevel)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (
            PairedValues.WhyNoLine(pairs.X.AsSpan(), FewestPairs, Refusal.TooFewForLine) is
            { } reason
        )
        {
            return Estimate.Refused<TheilSenFit>(reason);
        }

        var slopes = pairs.Slopes;
        var count = slopes.Finite;
        var margin = Normal.Quantile((1 + confidenceLevel) / 2) * Math.Sqrt(Variance(pairs));
        var rank = (long)Math.Floor(((count - margin) / 2) + 0.5);
        var (lower, upper) = ((count + 1) / 2, (count / 2) + 1);
        var found =
            rank < 1
                ? slopes.AtRanks(lower, upper)
                : slopes.AtRanks(lower, upper, rank, count - rank + 1);
        var slope = (found[0].Value + found[1].Value) / 2;
        var intercept = PassingBablok.MedianIntercept(pairs, slope);
        if (rank < 1)
        {
            return Estimate.Refused<TheilSenFit>(
                new NotComputable(Refusal.TooFewSlopes, Point: new(slope, intercept))
            );
        }

        return Estimate.Of(
            new TheilSenFit(
                pairs.Count,
                count,
                slope,
                found[2].Value,
                found[3].Value,
                intercept,
                confidenceLevel
            )
        );
    }

    /// <summary>Variance of concordant minus discordant twos when x and y are unrelated, given the ties in x.</summary>
    private static double Variance(ExactPairs pairs)
    {
        var ties = pairs.ScaledX.GroupBy(x => x).Sum(group => Term(group.Count()));
        return (Term(pairs.Count) - ties) / 18;

        static double Term(double n) => n * (n - 1) * ((2 * n) + 5);
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Passing–Bablok regression: the shifted median of the slopes between all twos of pairs. It needs no distribution of the errors,
/// treats x and y alike, and presumes that y rises with x and that both have errors of the same kind.
/// </summary>
public static class PassingBablok
{
    /// <summary>Above this share of twos with the same x or the same y the ranks say less than their number suggests. A choice of this program, not of the papers.</summary>
    private const double HeavyTieShare = 0.25;

    /// <summary>
    /// Passing and Bablok, J Clin Chem Clin Biochem 21 (1983) 709–720 (from memory). Slopes Sᵢⱼ = (yᵢ − yⱼ)/(xᵢ − xⱼ) for all i &lt; j; 0/0 and −1 are left out, a
    /// vertical slope ranks above all others; N slopes remain, K of them below −1. The slope is the median shifted by K ranks, for even N
    /// the arithmetic mean of the two in the middle. With C = z·√(n(n − 1)(2n + 5)/18), M₁ = (N − C)/2 rounded half up and M₂ = N − M₁ + 1, the interval runs from rank M₁ + K
    /// to rank M₂ + K. The intercept is the median of y − bx, its lower end that of the upper slope and the reverse.
    /// Assumes independent pairs, a straight rising relation, and error variances whose ratio is the square of the slope. −1, 0/0, ties and the order of the slopes are
    /// decided exactly. In swapping x and y the slope turns into its reciprocal (for even N its two middle ranks do, not their mean). Smallest n: 3 by
    /// rule, 5 for an interval at 95 %.
    /// </summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>
    /// The line, with a note on heavy ties where they make it coarse; or, checked in this order: too few values, constant baseline, zero
    /// spread of y, no positive association (the interval of Kendall's τ-b reaches to 0 or below), no interval at this size (M₁ &lt; 1), infinite slope (a selected rank is vertical or beyond the last); the last two with the line alone where only the interval is refused.
    /// </returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    /// <exception cref="ArgumentException">The level is not between 0 and 1.</exception>
    public static Estimate<PassingBablokFit> Fit(ExactPairs pairs, double confidenceLevel)
    {
        var ranking = RankedSlopes.Of(pairs, confidenceLevel);
        return ranking.TryGet(out var slopes)
            ? FromRanks(pairs, slopes)
            : ranking.RefusedAs<PassingBablokFit>();
    }

    private static Estimate<PassingBablokFit> FromRanks(ExactPairs pairs, RankedSlopes slopes)
    {
        var why = slopes.HasInterval ? Refusal.VerticalSlope : Refusal.TooFewSlopes;
        if (slopes.LowerMiddle is not { } middleLower || slopes.UpperMiddle is not { } middleUpper)
        {
            return Estimate.Refused<PassingBablokFit>(why);
        }

        var slope = (middleLower.Value + middleUpper.Value) / 2;
        if (slopes.Lower is not { } lower || slopes.Upper is not { } upper)
        {
            return Estimate.Refused<PassingBablokFit>(
                new NotComputable(why, Point: new(slope, MedianIntercept(pairs, slope)))
            );
        }

        double[] lines = [slope, upper.Value, lower.Value];
        var intercepts = new double[lines.Length];
        Parallel.For(0, lines.Length, i => intercepts[i] = MedianIntercept(pairs, lines[i]));
        var fit = new PassingBablokFit(
            pairs.Count,
            slopes.Count,
            slopes.BelowMinusOne,
            slope,
            lower.Value,
            upper.Value,
            intercepts[0],
            intercepts[1],
            intercepts[2],
            slopes.Association.ConfidenceLevel,
            CusumTest.Compute(pairs, middleLower, middleUpper)
        );
        return HasHeavyTies(fit, slopes.Association)
            ? Estimate.Of(fit, EstimateNote.HeavyTies)
            : Estimate.Of(fit);
    }

    /// <summary>The median of y − slope·x.</summary>
    internal static double MedianIntercept(ExactPairs pairs, double slope)
    {
        var intercepts = new double[pairs.Count];
        for (var i = 0; i < intercepts.Length; i++)
        {
            intercepts[i] = pairs.Y[i] - (slope * pairs.X[i]);
        }

        return MiddleValue.Of(intercepts);
    }

    private static bool HasHeavyTies(PassingBablokFit fit, KendallTau tau)
    {
        var twos = (long)tau.Count * (tau.Count - 1) / 2;
        var tied = Math.Max(tau.TiedInX, tau.TiedInY);
        return fit.SlopeLower == fit.SlopeUpper || tied > HeavyTieShare * twos;
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slopes between all twos of pairs at the ranks that Passing and Bablok select, in exact order: 0/0 and −1 have none, a vertical one is above all others. Every rank is shifted by the number of
/// slopes below −1; a rank beyond the last is absent.
/// </summary>
/// <param name="Count">N, the number of ranked slopes.</param>
/// <param name="BelowMinusOne">K, the number of ranked slopes below −1.</param>
/// <param name="Association">The rank correlation that shows that y rises with x.</param>
/// <param name="HasInterval">Whether the pairs are enough for an interval: M₁ is at least 1.</param>
/// <param name="Lower">Lower end of the interval, rank M₁.</param>
/// <param name="LowerMiddle">The slope in the middle when N is odd, else the lower of the two.</param>
/// <param name="UpperMiddle">The slope in the middle when N is odd, else the upper of the two.</param>
/// <param name="Upper">Upper end of the interval, rank N − M₁ + 1.</param>
internal sealed record RankedSlopes(
    long Count,
    long BelowMinusOne,
    KendallTau Association,
    bool HasInterval,
    ExactSlope? Lower,
    ExactSlope? LowerMiddle,
    ExactSlope? UpperMiddle,
    ExactSlope? Upper
)
{
    private static readonly ExactSlope s_minusOne = ExactSlope.Finite(1, -1);

    /// <summary>Ranks the slopes, or says why the method does not apply; the order of the checks is that of <see cref="PassingBablok.Fit"/>.</summary>
    public static Estimate<RankedSlopes> Of(ExactPairs pairs, double confidenceLevel)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        var association = KendallRankCorrelation.Compute(pairs, confidenceLevel);
        if (!association.TryGet(out var tau))
        {
            return association.RefusedAs<RankedSlopes>();
        }

        if (tau.Lower <= 0)
        {
            return Estimate.Refused<RankedSlopes>(
                new NotComputable(Refusal.NoPositiveAssociation, Association: tau)
            );
        }

        var slopes = pairs.Slopes;
        var below = slopes.CountBelow(s_minusOne);
        var atMinusOne = slopes.CountUpTo(s_minusOne) - below;
        var count = slopes.Finite - atMinusOne + slopes.Vertical;
        var rank = LowerRank(pairs.Count, count, confidenceLevel);
        // Ranked ones above −1 have those of exactly −1 below them too; beyond the finite ones come the vertical.
        long[] wanted =
        [
            .. new[] { rank, (count + 1) / 2, (count / 2) + 1, count - rank + 1 }.Select(shifted =>
                shifted >= 1 && shifted <= count ? shifted + below + atMinusOne : 0
            ),
        ];
        long[] finite = [.. wanted.Where(place => place >= 1 && place <= slopes.Finite)];
        var found = slopes.AtRanks(finite);
        ExactSlope? At(long place) =>
            Array.IndexOf(finite, place) is >= 0 and var index ? found[index] : null;
        return Estimate.Of(
            new RankedSlopes(
                count,
                below,
                tau,
                rank >= 1,
                At(wanted[0]),
                At(wanted[1]),
                At(wanted[2]),
                At(wanted[3])
            )
        );
    }

    /// <summary>M₁ = (N − C)/2 rounded half up, C = z·√(n(n − 1)(2n + 5)/18); below 1 when there is no interval.</summary>
    private static long LowerRank(int pairCount, long slopeCount, double confidenceLevel)
    {
        double n = pairCount;
        var halfWidth =
            Normal.Quantile((1 + confidenceLevel) / 2)
            * Math.Sqrt(n * (n - 1) * ((2 * n) + 5) / 18);
        return (long)Math.Floor(((slopeCount - halfWidth) / 2) + 0.5);
    }
}

using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>Why the interval of a mean change cannot be trusted, in a fixed order. One doubt makes the criterion inconclusive.</summary>
internal static class BiasDoubts
{
    /// <summary>
    /// Beyond this skewness toward the nearer limit the interval of the mean is too short to be trusted. The doubt also
    /// holds when that limit is many standard errors away, where the interval could hardly be wrong by so much: a rule with
    /// a distance in it would have one more constant to defend, and erring toward inconclusive is the safe direction.
    /// </summary>
    private const double LargestSkewness = 1;

    /// <summary>Every doubt; empty when there is none.</summary>
    public static ImmutableArray<VerdictReason> Of(
        ClusteredMeanInterval interval,
        Estimate<SpreadSummary> spread,
        ChangeOnScale changes,
        CellEvidence cell
    )
    {
        var doubts = ImmutableArray.CreateBuilder<VerdictReason>();
        if (cell.FewDaysOfMean is { } fewDays)
        {
            doubts.Add(fewDays);
        }

        if (
            interval.BySpecimen.StandardDeviation == 0
            || cell.Data.Pairs.Difference is [var first, ..]
                && cell.Data.Pairs.Difference.All(d => d == first)
        )
        {
            doubts.Add(new SameChangesReason(changes.Resolution));
        }

        if (OfUncounted(cell.Uncounted) is { } missing)
        {
            doubts.Add(missing);
        }

        if (spread.NotComputable is { Kind: Refusal.TooFewForSkewness } tooFew)
        {
            doubts.Add(new NotComputableReason(tooFew));
        }

        if (
            spread.TryGet(out var summary)
            && OfSkewness(summary.Skewness, summary.Mean, changes) is { } skewed
        )
        {
            doubts.Add(skewed);
        }

        return doubts.ToImmutable();
    }

    /// <summary>Specimens that neither a mean nor a share counts are a doubt; null when there are none.</summary>
    public static VerdictReason? OfUncounted(int uncounted) =>
        uncounted == 0 ? null : new UncountedPairsReason(uncounted);

    /// <summary>Changes skewed toward the limit that is nearer to their center; null when they are not, or little.</summary>
    public static VerdictReason? OfSkewness(double skewness, double center, ChangeOnScale changes)
    {
        var roomAbove = changes.UpperLimit - center;
        var roomBelow = center - changes.LowerLimit;
        var toward =
            (skewness > LargestSkewness && roomAbove <= roomBelow)
            || (skewness < -LargestSkewness && roomBelow <= roomAbove);
        return toward ? new SkewedReason(skewness) : null;
    }
}

using System.Collections.Immutable;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Decides a bias criterion: met when the interval of the mean change lies strictly inside the limits, not met when it
/// lies wholly outside, else inconclusive; and inconclusive whenever the interval cannot be trusted.
/// </summary>
internal static class BiasEvaluation
{
    /// <param name="criterion">The criterion.</param>
    /// <param name="limit">Its limit.</param>
    /// <param name="data">The compared pairs.</param>
    /// <param name="minimumDays">Fewest collection days.</param>
    /// <param name="uncounted">Pairs that neither the mean nor any individual criterion counts: failed, beyond the measuring interval, missing without a reason.</param>
    public static BiasResult Evaluate(
        BiasCriterion criterion,
        Limit limit,
        CellData data,
        int minimumDays,
        int uncounted
    )
    {
        var change = ChangeOnScale.Of(data, criterion.Scale, limit);
        if (!change.TryGet(out var changes))
        {
            return Refused(criterion, limit, change.NotComputable!);
        }

        var mean = ClusteredMean.WithInterval(
            changes.Values.AsSpan(),
            data.Day.AsSpan(),
            criterion.ConfidenceLevel
        );
        var spread = Spread.Summarize(changes.Values.AsSpan());
        if (!mean.TryGet(out var interval))
        {
            return Refused(criterion, limit, mean.NotComputable!) with
            {
                LowerLimit = changes.LowerLimit,
                UpperLimit = changes.UpperLimit,
            };
        }

        var equivalence = TwoOneSidedTests.Compute(
            interval.Mean,
            interval.StandardError,
            interval.DegreesOfFreedom,
            changes.LowerLimit,
            changes.UpperLimit
        );
        var doubts = BiasDoubts.Of(interval, spread, changes, data, minimumDays, uncounted);
        var (verdict, reason) = ByInterval(interval, changes);
        return new BiasResult(
            criterion.Id,
            limit,
            doubts.IsEmpty ? verdict : Verdict.Inconclusive,
            doubts.Add(reason),
            criterion.Scale,
            criterion.ConfidenceLevel,
            changes.LowerLimit,
            changes.UpperLimit,
            mean,
            equivalence,
            spread
        );
    }

    private static (Verdict Verdict, VerdictReason Reason) ByInterval(
        ClusteredMeanInterval interval,
        ChangeOnScale changes
    )
    {
        if (interval.Lower > changes.LowerLimit && interval.Upper < changes.UpperLimit)
        {
            return (
                Verdict.Met,
                new(
                    "interval-inside",
                    "the interval of the mean change lies inside the allowable bias"
                )
            );
        }

        return interval.Lower >= changes.UpperLimit || interval.Upper <= changes.LowerLimit
            ? (
                Verdict.NotMet,
                new(
                    "interval-outside",
                    "the interval of the mean change lies wholly beyond the allowable bias"
                )
            )
            : (
                Verdict.Inconclusive,
                new(
                    "interval-reaches-limit",
                    "the interval of the mean change reaches beyond the allowable bias"
                )
            );
    }

    private static BiasResult Refused(BiasCriterion criterion, Limit limit, NotComputable why) =>
        new(
            criterion.Id,
            limit,
            Verdict.Inconclusive,
            [new(why.Code, why.Reason)],
            criterion.Scale,
            criterion.ConfidenceLevel,
            0,
            0,
            Estimate.Refused<ClusteredMeanInterval>(why.Code, why.Reason),
            Estimate.Refused<EquivalenceTest>(why.Code, why.Reason),
            Estimate.Refused<SpreadSummary>(why.Code, why.Reason)
        );
}

using System.Collections.Immutable;
using System.Globalization;
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
    /// <summary>Beyond this skewness toward the nearer limit the interval of the mean is too short to be trusted.</summary>
    private const double LargestSkewness = 1;

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
        var doubts = Doubts(interval, spread, changes, data, minimumDays, uncounted);
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

    private static ImmutableArray<VerdictReason> Doubts(
        ClusteredMeanInterval interval,
        Estimate<SpreadSummary> spread,
        ChangeOnScale changes,
        CellData data,
        int minimumDays,
        int uncounted
    )
    {
        var doubts = ImmutableArray.CreateBuilder<VerdictReason>();
        if (data.DayCount < minimumDays && !data.SameRun)
        {
            doubts.Add(
                new(
                    "too-few-days",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"only {data.DayCount} collection days, at least {minimumDays} required: a run's error does not average out over specimens"
                    )
                )
            );
        }

        if (
            interval.BySpecimen.StandardDeviation == 0
            || data.Pairs.Difference.Distinct().Count() == 1
        )
        {
            doubts.Add(
                new(
                    "zero-spread",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"all changes are the same, so the data tell no more than ± half a reporting increment ({changes.Resolution:0.###})"
                    )
                )
            );
        }

        if (uncounted > 0)
        {
            doubts.Add(
                new(
                    "uncounted-pairs",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{uncounted} specimens have no pair of measured results, and no individual criterion counts them"
                    )
                )
            );
        }

        if (spread.NotComputable is { Code: AssumptionCode.TooFewValues } tooFew)
        {
            doubts.Add(new(tooFew.Code, tooFew.Reason));
        }

        if (spread.TryGet(out var summary) && IsSkewedTowardNearerLimit(summary, changes))
        {
            doubts.Add(
                new(
                    "skewed",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the changes are skewed toward the nearer limit (skewness {summary.Skewness:0.0}), which makes the interval of the mean too short"
                    )
                )
            );
        }

        return doubts.ToImmutable();
    }

    private static bool IsSkewedTowardNearerLimit(SpreadSummary summary, ChangeOnScale changes)
    {
        var roomAbove = changes.UpperLimit - summary.Mean;
        var roomBelow = summary.Mean - changes.LowerLimit;
        return (summary.Skewness > LargestSkewness && roomAbove <= roomBelow)
            || (summary.Skewness < -LargestSkewness && roomBelow <= roomAbove);
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

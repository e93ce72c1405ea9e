using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>
/// Decides a bias criterion: met when the interval of the mean change lies strictly inside the limits, not met when it
/// lies wholly outside, else inconclusive; and inconclusive whenever the interval cannot be trusted.
/// </summary>
internal static class BiasEvaluation
{
    /// <param name="criterion">The criterion.</param>
    /// <param name="limit">Its limit.</param>
    /// <param name="cell">What it is judged on.</param>
    public static BiasResult Evaluate(BiasCriterion criterion, Limit limit, CellEvidence cell)
    {
        var change = ChangeOnScale.Of(cell.Data, criterion.Scale, limit);
        if (!change.TryGet(out var changes))
        {
            return Refused(criterion, limit, change.NotComputable!);
        }

        var (mean, persons) = MeanOfRepeatDraws.Of(
            changes.Values,
            cell.Data,
            criterion.ConfidenceLevel
        );
        var spread = Spread.Summarize(changes.Values.AsSpan());
        if (!mean.TryGet(out var interval))
        {
            return Refused(criterion, limit, mean.NotComputable!);
        }

        var equivalence = LeastFavorable(interval, persons, changes);
        var doubts = BiasDoubts.Of(interval, spread, changes, cell);
        var (verdict, reason) =
            criterion.Rule == DecisionRule.PointOnly
                ? ByMeanOnly(interval.Mean, changes)
                : ByInterval(interval.Lower, interval.Upper, changes);
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

    /// <summary>
    /// The tests over specimens, over collection days and over persons, as the interval spans all of them: the largest p value stands. One that cannot be computed, with one
    /// day or without spread, leaves the others.
    /// </summary>
    private static Estimate<EquivalenceTest> LeastFavorable(
        ClusteredMeanInterval interval,
        MeanInterval? persons,
        ChangeOnScale changes
    )
    {
        Estimate<EquivalenceTest> Of(MeanInterval mean) =>
            TwoOneSidedTests.Compute(
                mean.Mean,
                mean.StandardError,
                mean.DegreesOfFreedom,
                changes.LowerLimit,
                changes.UpperLimit
            );
        return new[] { interval.ByCluster.Value, persons }
            .OfType<MeanInterval>()
            .Select(Of)
            .Aggregate(
                Of(interval.BySpecimen),
                (worst, test) => test.Value?.PValue > (worst.Value?.PValue ?? 0) ? test : worst
            );
    }

    private static (Verdict Verdict, VerdictReason Reason) ByMeanOnly(
        double mean,
        ChangeOnScale changes
    ) =>
        (
            mean >= changes.LowerLimit && mean <= changes.UpperLimit ? Verdict.Met : Verdict.NotMet,
            new MeanAloneReason()
        );

    /// <summary>What an interval of the mean, or of a location in its place, says.</summary>
    internal static (Verdict Verdict, VerdictReason Reason) ByInterval(
        double lower,
        double upper,
        ChangeOnScale changes
    ) =>
        IntervalVerdict.Of(
            lower,
            upper,
            changes.LowerLimit,
            changes.UpperLimit,
            new MeanChangeFigure()
        );

    private static BiasResult Refused(BiasCriterion criterion, Limit limit, NotComputable why) =>
        new(
            criterion.Id,
            limit,
            Verdict.Inconclusive,
            [new NotComputableReason(why)],
            criterion.Scale,
            criterion.ConfidenceLevel,
            ChangeOnScale.LimitsOn(criterion.Scale, limit)?.Lower,
            ChangeOnScale.LimitsOn(criterion.Scale, limit)?.Upper,
            Estimate.Refused<ClusteredMeanInterval>(why),
            Estimate.Refused<EquivalenceTest>(why),
            Estimate.Refused<SpreadSummary>(why)
        );
}

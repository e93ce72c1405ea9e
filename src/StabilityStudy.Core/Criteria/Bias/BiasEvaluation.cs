using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>
/// Decides a bias criterion: met when the interval of the mean change lies strictly inside the limits in every reading, not met when it
/// lies wholly outside in every one, else inconclusive; and inconclusive whenever the interval cannot be trusted.
/// </summary>
internal static class BiasEvaluation
{
    /// <param name="criterion">The criterion.</param>
    /// <param name="limit">Its limit.</param>
    /// <param name="cell">What it is judged on.</param>
    public static BiasResult Evaluate(BiasCriterion criterion, Limit limit, CellEvidence cell)
    {
        var limits = ChangeOnScale.LimitsOn(criterion.Scale, limit);
        var readings = cell
            .Readings.Select(reading => Read(criterion, limit, reading))
            .ToImmutableArray();
        var deciding = InEveryReading.Deciding(readings, item => item.Verdict, item => item.Room);
        BiasResult Result(
            Verdict verdict,
            ImmutableArray<VerdictReason> reasons,
            Estimate<EquivalenceTest> equivalence
        ) =>
            new(
                criterion.Id,
                limit,
                verdict,
                reasons,
                criterion.Scale,
                criterion.ConfidenceLevel,
                limits?.Lower,
                limits?.Upper,
                deciding.Mean,
                equivalence,
                deciding.Spread
            )
            {
                Reading = deciding.Reading,
                Readings = readings,
            };

        if (deciding is not { Changes: { } changes } || !deciding.Mean.TryGet(out var interval))
        {
            return Result(
                Verdict.Inconclusive,
                [new NotComputableReason(deciding.Mean.NotComputable!)],
                deciding.Mean.RefusedAs<EquivalenceTest>()
            );
        }

        var verdict = InEveryReading.Of(readings.Select(item => item.Verdict));
        var doubts = BiasDoubts.Of(readings, cell);
        if (verdict == Verdict.Met && LevelDoubt.Of(criterion, limit, cell) is { } ofLevel)
        {
            doubts = doubts.Add(ofLevel);
        }

        return Result(
            doubts.IsEmpty ? verdict : Verdict.Inconclusive,
            doubts.Add(deciding.Reason!),
            LeastFavorable(interval, changes)
        );
    }

    private static ReadMean Read(BiasCriterion criterion, Limit limit, PairReading reading)
    {
        var leftOut = reading.WithoutBridging.Length + reading.WithoutValueAtCollection.Length;
        var change = ChangeOnScale.Of(reading.Data, criterion.Scale, limit);
        if (!change.TryGet(out var changes))
        {
            return new(
                reading.Kind,
                leftOut,
                change.RefusedAs<ClusteredMeanInterval>(),
                change.RefusedAs<SpreadSummary>(),
                Verdict.Inconclusive
            );
        }

        var mean = ClusteredMean.WithInterval(
            changes.Values.AsSpan(),
            reading.Data.Errors.Clusterings,
            criterion.ConfidenceLevel
        );
        if (!mean.TryGet(out var interval))
        {
            return new(
                reading.Kind,
                leftOut,
                mean,
                mean.RefusedAs<SpreadSummary>(),
                Verdict.Inconclusive
            )
            {
                Changes = changes,
            };
        }

        var (verdict, reason) = Judge(criterion, interval, changes);
        return new(reading.Kind, leftOut, mean, Spread.Summarize(changes.Values.AsSpan()), verdict)
        {
            Changes = changes,
            Reason = reason,
        };
    }

    /// <summary>
    /// The tests over specimens and over every clustering, as the interval spans all of them: the largest p value stands. One that cannot be computed, without spread, leaves the others. A
    /// half that skewness lengthens has a standard error longer by the same factor, so that p agrees with the interval.
    /// </summary>
    private static Estimate<EquivalenceTest> LeastFavorable(
        ClusteredMeanInterval interval,
        ChangeOnScale changes
    )
    {
        Estimate<EquivalenceTest> Of(double mean, double standardError, double degreesOfFreedom)
        {
            Estimate<EquivalenceTest> Lengthened(double by) =>
                TwoOneSidedTests.Compute(
                    mean,
                    standardError * by,
                    degreesOfFreedom,
                    changes.LowerLimit,
                    changes.UpperLimit
                );
            var down = Lengthened(interval.Stretch.Downward);
            var up = Lengthened(interval.Stretch.Upward);
            return down.TryGet(out var lower) && up.TryGet(out var upper)
                ? Estimate.Of(
                    upper with
                    {
                        PValueLower = lower.PValueLower,
                        PValue = Math.Max(lower.PValueLower, upper.PValueUpper),
                    }
                )
                : down;
        }

        var bySpecimen = interval.BySpecimen;
        return interval
            .ByCluster.Select(item => Of(item.Mean, item.StandardError, item.DegreesOfFreedom))
            .Aggregate(
                Of(bySpecimen.Mean, bySpecimen.StandardError, bySpecimen.DegreesOfFreedom),
                (worst, test) => test.Value?.PValue > (worst.Value?.PValue ?? 0) ? test : worst
            );
    }

    private static (Verdict Verdict, VerdictReason Reason) Judge(
        BiasCriterion criterion,
        ClusteredMeanInterval interval,
        ChangeOnScale changes
    ) =>
        criterion.Rule == DecisionRule.PointOnly
            ? (
                interval.Mean >= changes.LowerLimit && interval.Mean <= changes.UpperLimit
                    ? Verdict.Met
                    : Verdict.NotMet,
                new MeanAloneReason()
            )
            : ByInterval(interval.Lower, interval.Upper, changes);

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
}

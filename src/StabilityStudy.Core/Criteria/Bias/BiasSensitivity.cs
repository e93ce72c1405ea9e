using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The bias criteria on another scale, and with another location in place of the mean.</summary>
internal static class BiasSensitivity
{
    /// <summary>Coarser reporting than this share of the allowance makes ties that the Hodges–Lehmann interval cannot bear.</summary>
    private const double LargestIncrement = 0.25;

    /// <summary>What rounding can add to an average, as a share of it.</summary>
    private const double LastDigits = 1e-14;

    /// <summary>A line a question; none without a bias criterion.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence cell
    )
    {
        var rules = cell.Context.Rules<BiasCriterion>();
        foreach (
            var (from, to) in new[]
            {
                (ChangeScale.Percent, ChangeScale.LogRatio),
                (ChangeScale.LogRatio, ChangeScale.Percent),
            }
        )
        {
            if (rules.Values.Any(rule => rule.Scale == from))
            {
                yield return Line(
                    new RobustnessQuestion(RobustnessKind.OtherScale) { Scale = to },
                    Replace(result =>
                        rules[result.Criterion] is var rule && rule.Scale == from
                            ? BiasEvaluation.Evaluate(rule with { Scale = to }, result.Limit, cell)
                            : result
                    )
                );
            }
        }

        if (Located((values, level) => Median.WithInterval(values.AsSpan(), level)) is { } median)
        {
            yield return Line(new RobustnessQuestion(RobustnessKind.MedianInPlaceOfMean), median);
        }

        if (
            criteria.OfType<BiasResult>().All(result => IsFine(result, cell.Data))
            && Located((values, level) => HodgesLehmann.WithInterval(values.AsSpan(), level))
                is { } hodgesLehmann
        )
        {
            yield return Line(
                new RobustnessQuestion(RobustnessKind.HodgesLehmannInPlaceOfMean),
                hodgesLehmann
            );
        }

        RobustnessLine Line(RobustnessQuestion question, ImmutableArray<CriterionResult> other) =>
            RobustnessLine.Of(question, criteria, other);

        ImmutableArray<CriterionResult> Replace(Func<BiasResult, BiasResult> other) =>
            [.. criteria.Select(result => result is BiasResult bias ? other(bias) : result)];

        ImmutableArray<CriterionResult>? Located(
            Func<ImmutableArray<double>, double, Estimate<OrderInterval>> locate
        )
        {
            var located = criteria
                .OfType<BiasResult>()
                .ToDictionary(result => result.Criterion, result => At(result, cell, locate));
            return located.Values.Any(result => result is null)
                ? null
                : Replace(result => located[result.Criterion]!);
        }
    }

    /// <summary>Doubts about days, runs and pairs stay.</summary>
    private static BiasResult? At(
        BiasResult result,
        CellEvidence cell,
        Func<ImmutableArray<double>, double, Estimate<OrderInterval>> locate
    )
    {
        var located = cell
            .Readings.Select(reading => VerdictAt(result, reading.Data, locate))
            .ToImmutableArray();
        return located.Contains(null)
            ? null
            : result with
            {
                Verdict = result.Reasons.Any(IsOfPairs)
                    ? Verdict.Inconclusive
                    : InEveryReading.Of(located.OfType<Verdict>()),
            };
    }

    private static Verdict? VerdictAt(
        BiasResult result,
        CellData data,
        Func<ImmutableArray<double>, double, Estimate<OrderInterval>> locate
    ) =>
        ChangeOnScale.Of(data, result.Scale, result.Limit).TryGet(out var changes)
        && locate(changes.Values, result.ConfidenceLevel).TryGet(out var interval)
            ? BiasEvaluation
                .ByInterval(
                    Settled(interval.Lower, changes),
                    Settled(interval.Upper, changes),
                    changes
                )
                .Verdict
            : null;

    private static bool IsOfPairs(VerdictReason reason) =>
        reason
            is TooFewDaysReason
                or TooFewRunsReason
                or UncountedPairsReason
                or SameChangesReason
                or LevelDependentReason
                or NoValueAtCollectionReason;

    /// <summary>An average of two changes that is a limit but for its last digits is that limit, and so not inside.</summary>
    private static double Settled(double end, ChangeOnScale changes)
    {
        foreach (var limit in new[] { changes.LowerLimit, changes.UpperLimit })
        {
            if (Math.Abs(end - limit) <= LastDigits * Math.Abs(limit))
            {
                return limit;
            }
        }

        return end;
    }

    private static bool IsFine(BiasResult result, CellData data) =>
        ChangeOnScale.Of(data, result.Scale, result.Limit).TryGet(out var changes)
        && 2 * changes.Resolution <= LargestIncrement * changes.UpperLimit;
}

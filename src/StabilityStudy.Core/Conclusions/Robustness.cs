using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Conclusions;

/// <summary>Asks what could overturn a cell's conclusion. Nothing here decides.</summary>
internal static class Robustness
{
    public static ImmutableArray<RobustnessLine> Of(
        ImmutableArray<PairRecord> pairs,
        ImmutableArray<CriterionResult> criteria,
        CellContext context
    )
    {
        var own = CellEvaluation.Conclude(criteria);
        if (own == Conclusion.NotAssessed)
        {
            return [];
        }

        var data = context.DataOf(pairs);
        var lines = ImmutableArray.CreateBuilder<RobustnessLine>();
        void Add(string code, string question, ImmutableArray<CriterionResult> other) =>
            lines.Add(RobustnessLine.Of(code, question, own, CellEvaluation.Conclude(other)));

        lines.AddRange(OneSubject.Of(pairs, criteria, context));
        lines.AddRange(IndividualSensitivity.Of(criteria, data.SameRun, context));
        lines.AddRange(MoreChanged.Of(criteria));
        var flagged = data.Compared.Count(pair => pair.IsOutlier);
        if (flagged > 0)
        {
            Add(
                "without-flagged-outliers",
                $"with the {Number(flagged, "flagged outlier", "flagged outliers")} left out of the mean; the share keeps every specimen",
                CellEvaluation.Evaluate(data.WithoutPairs(pair => pair.IsOutlier), pairs, context)
            );
        }

        foreach (var other in LeftOutPairs.Of(pairs, context))
        {
            Add(other.Code, other.Question, CellEvaluation.Evaluate(other.Pairs, context));
        }

        if (pairs.Any(pair => pair.Status == PairStatus.BeyondInterval))
        {
            Add(
                "beyond-interval-at-the-limit",
                "with each result beyond a limit of measurement taken as that limit",
                CellEvaluation.Evaluate([.. pairs.Select(AtTheLimit)], context)
            );
        }

        foreach (
            var other in BiasSensitivity
                .Of(criteria, data, pairs, context)
                .Concat(DecisionLevelSensitivity.Of(criteria, data, pairs, context))
        )
        {
            Add(other.Code, other.Question, other.Criteria);
        }

        return lines.ToImmutable();
    }

    private static PairRecord AtTheLimit(PairRecord pair) =>
        pair is { Status: PairStatus.BeyondInterval, Baseline: { } baseline, Delayed: { } delayed }
            ? pair with
            {
                Status = PairStatus.Compared,
                Baseline = baseline with { Result = AtTheLimit(baseline.Result) },
                Delayed = delayed with { Result = AtTheLimit(delayed.Result) },
            }
            : pair;

    private static ReportedResult AtTheLimit(ReportedResult result) =>
        result is CensoredResult censored
            ? new MeasuredResult(censored.Text, censored.Limit)
            : result;

    internal static string Number(int count, string one, string many) =>
        count == 1 ? "one " + one : count.ToString(CultureInfo.InvariantCulture) + " " + many;
}

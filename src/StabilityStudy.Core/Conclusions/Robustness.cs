namespace StabilityStudy.Core.Conclusions;

/// <summary>Asks what could overturn a cell's conclusion. Nothing here decides.</summary>
internal static class Robustness
{
    public static ImmutableArray<RobustnessLine> Of(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence cell
    )
    {
        if (CellEvaluation.Conclude(criteria) == Conclusion.NotAssessed)
        {
            return [];
        }

        var ofKinds = cell
            .Context.Applying.Select(item => item.Criterion)
            .DistinctBy(rule => rule.Kind)
            .OrderBy(rule => rule.Kind)
            .SelectMany(rule => rule.Sensitivity(criteria, cell))
            .ToLookup(line => line.Question.IsOfFurtherSpecimens);
        return
        [
            .. OneSubject.Of(criteria, cell),
            .. ofKinds[true],
            .. OfOtherPairs(criteria, cell)
                .Select(other => RobustnessLine.Of(other.Question, criteria, other.Results)),
            .. ofKinds[false],
        ];
    }

    /// <summary>Each question about which pairs count, with what the criteria would say.</summary>
    private static IEnumerable<(
        RobustnessQuestion Question,
        ImmutableArray<CriterionResult> Results
    )> OfOtherPairs(ImmutableArray<CriterionResult> criteria, CellEvidence cell)
    {
        var flagged = cell.Data.Compared.Count(pair => pair.IsOutlier);
        if (flagged > 0)
        {
            yield return (
                new RobustnessQuestion(RobustnessKind.WithoutFlaggedOutliers, flagged),
                OfMeans(criteria, cell.WithoutPairs(pair => pair.IsOutlier))
            );
        }

        foreach (var (question, pairs) in LeftOutPairs.Of(cell.Pairs, cell.Context))
        {
            yield return (question, CellEvaluation.Evaluate(cell.WithPairs(pairs)));
        }

        if (cell.Pairs.Any(pair => pair.Status == PairStatus.BeyondInterval))
        {
            yield return (
                new RobustnessQuestion(RobustnessKind.BeyondIntervalAtTheLimit),
                CellEvaluation.Evaluate(cell.WithPairs(cell.Pairs.Map(AtTheLimit)))
            );
        }
    }

    /// <summary>What the criteria would say without some compared pairs: those that count every pair say the same.</summary>
    private static ImmutableArray<CriterionResult> OfMeans(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence without
    ) =>
        [
            .. without.Context.Applying.Select(
                (item, i) =>
                    item.Criterion.CountsEveryPair
                        ? criteria[i]
                        : item.Criterion.Evaluate(item.Limit, without)
            ),
        ];

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
}

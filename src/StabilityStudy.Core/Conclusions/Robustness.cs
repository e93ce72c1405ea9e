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
            .. OfOtherPairs(cell)
                .Select(other =>
                    RobustnessLine.Of(other.Question, criteria, CellEvaluation.Evaluate(other.Cell))
                ),
            .. ofKinds[false],
        ];
    }

    /// <summary>Each question about which pairs count, with the cell as it would be.</summary>
    private static IEnumerable<(RobustnessQuestion Question, CellEvidence Cell)> OfOtherPairs(
        CellEvidence cell
    )
    {
        var flagged = cell.Data.Compared.Count(pair => pair.IsOutlier);
        if (flagged > 0)
        {
            yield return (
                new RobustnessQuestion(RobustnessKind.WithoutFlaggedOutliers, flagged),
                cell.WithoutPairs(pair => pair.IsOutlier)
            );
        }

        foreach (var (question, pairs) in LeftOutPairs.Of(cell.Pairs, cell.Context))
        {
            yield return (question, CellEvidence.From(pairs, cell.Context));
        }

        if (cell.Pairs.Any(pair => pair.Status == PairStatus.BeyondInterval))
        {
            yield return (
                new RobustnessQuestion(RobustnessKind.BeyondIntervalAtTheLimit),
                CellEvidence.From([.. cell.Pairs.Select(AtTheLimit)], cell.Context)
            );
        }
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
}

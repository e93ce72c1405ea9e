namespace StabilityStudy.Core.Criteria;

/// <summary>
/// The fewest further specimens that change side of a level, or class, with which a supported time point would no longer
/// be supported. It works on counts, level by level, with every change moved by what the runs could have added.
/// </summary>
internal static class MoreChanged
{
    /// <summary>The line of each result that can be lost so; none unless the time point is supported.</summary>
    /// <param name="criteria">What every criterion of the cell says.</param>
    /// <param name="fewestOf">The number with the level, if the question is of one; 0 where none can be lost.</param>
    public static IEnumerable<RobustnessLine> Of<T>(
        ImmutableArray<CriterionResult> criteria,
        Func<T, (int Count, decimal? Level)> fewestOf
    )
        where T : CriterionResult =>
        CellEvaluation.Conclude(criteria) != Conclusion.Supported
            ? []
            : from result in criteria.OfType<T>()
            let fewest = fewestOf(result)
            where fewest.Count > 0
            select RobustnessLine.Of(
                new RobustnessQuestion(RobustnessKind.FewestMoreChanged, fewest.Count)
                {
                    Level = fewest.Level,
                },
                criteria,
                [
                    .. criteria.Select(item =>
                        item == result ? item with { Verdict = Verdict.Inconclusive } : item
                    ),
                ]
            );

    /// <summary>The fewest further changes among those counted with which the share kept is no longer shown.</summary>
    public static int Fewest(
        int counted,
        int changed,
        decimal percentKept,
        double confidenceLevel
    ) =>
        FewestMore.ThatOpen(
            counted - changed,
            more =>
                ShareKept.Judge(
                    counted,
                    changed + more,
                    changed + more,
                    percentKept,
                    confidenceLevel
                ) == Verdict.Met
        );
}

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>
/// Turns specimens that count as inside into specimens that count as outside, for the individual criteria alone; every
/// other criterion stays as it is. It works on counts, so which specimen it would be makes no difference.
/// </summary>
internal static class IndividualSensitivity
{
    /// <summary>One more outside, and, for a supported cell that bears it, the fewest that would change the conclusion.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence cell
    )
    {
        var shares = criteria.OfType<IndividualResult>().ToImmutableArray();
        if (shares.IsEmpty || shares.Any(share => share.FewestInside == 0))
        {
            yield break;
        }

        var fewClusters = cell.FewClustersOfShare;
        var rules = cell.Context.Rules<IndividualCriterion>();
        IndividualResult With(IndividualResult share, int more) =>
            IndividualEvaluation.OfCounts(
                rules[share.Criterion],
                share.Limit,
                [
                    .. share.Readings.Select(item =>
                        (item.Reading, item.Agreement.WithMoreOutside(more))
                    ),
                ],
                fewClusters
            );
        RobustnessLine Line(RobustnessKind kind, int more) =>
            RobustnessLine.Of(
                new RobustnessQuestion(kind, more),
                criteria,
                [
                    .. criteria.Select(result =>
                        result is IndividualResult share ? With(share, more) : result
                    ),
                ]
            );

        yield return Line(RobustnessKind.OneMoreOutside, 1);
        var fewest = shares.Min(share =>
            FewestMore.ThatOpen(
                share.FewestInside,
                more => With(share, more).Verdict == Verdict.Met
            )
        );
        if (
            CellEvaluation.Conclude(criteria) == Conclusion.Supported
            && fewest > 1
            && shares.All(share => fewest <= share.FewestInside)
        )
        {
            yield return Line(RobustnessKind.FewestMoreOutside, fewest);
        }
    }
}

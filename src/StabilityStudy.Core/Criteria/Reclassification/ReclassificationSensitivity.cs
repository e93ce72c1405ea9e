namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>The fewest further changes of side with which a supported time point would no longer be supported.</summary>
internal static class ReclassificationSensitivity
{
    public static IEnumerable<RobustnessLine> Of(ImmutableArray<CriterionResult> criteria) =>
        MoreChanged.Of<ReclassificationResult>(
            criteria,
            sides =>
                Counts(sides)
                    .Select(item =>
                        (
                            Count: MoreChanged.Fewest(
                                item.Counted,
                                item.ChangedIfMoved,
                                (decimal)(100 * (1 - sides.LargestShare)),
                                sides.ConfidenceLevel
                            ),
                            Level: (decimal?)item.Level
                        )
                    )
                    .DefaultIfEmpty()
                    .MinBy(further => further.Count)
        );

    /// <summary>The counts of each level, and of all together: a further change at whichever level adds to them.</summary>
    private static IEnumerable<(int Counted, int ChangedIfMoved, decimal Level)> Counts(
        ReclassificationResult sides
    ) =>
        sides
            .Levels.Select(level => (level.Counted, level.ChangedIfMoved, level.Level))
            .Concat(
                sides.Together is { } together
                    ? [(together.Counted, together.ChangedIfMoved, together.Levels[0])]
                    : []
            );
}

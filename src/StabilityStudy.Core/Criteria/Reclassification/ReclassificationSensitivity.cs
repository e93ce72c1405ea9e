namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>The fewest further changes of side with which a supported time point would no longer be supported.</summary>
internal static class ReclassificationSensitivity
{
    public static IEnumerable<RobustnessLine> Of(ImmutableArray<CriterionResult> criteria) =>
        MoreChanged.Of<ReclassificationResult>(
            criteria,
            sides =>
                sides
                    .Levels.Select(level =>
                        (
                            Count: MoreChanged.Fewest(
                                level.Counted,
                                level.ChangedIfMoved,
                                (decimal)(100 * (1 - sides.LargestShare)),
                                sides.ConfidenceLevel
                            ),
                            Level: (decimal?)level.Level
                        )
                    )
                    .DefaultIfEmpty()
                    .MinBy(further => further.Count)
        );
}

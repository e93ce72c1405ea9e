namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>How many specimens the share that changes the side of each level needs.</summary>
internal static class ReclassificationSizing
{
    public static ImmutableArray<SizedFigure> Of(ReclassificationResult sides) =>
        [
            .. sides
                .Levels.Where(level => level.Counted > 0)
                .Select(level =>
                    SizedFigure.OfShare(
                        new JudgedFigure(
                            CriterionKind.Reclassification,
                            sides.Criterion,
                            level.Level
                        ),
                        (double)(level.Counted - level.Changed) / level.Counted,
                        1 - sides.LargestShare,
                        sides.ConfidenceLevel,
                        level.Reason is ChangesOpenReason
                    )
                ),
        ];
}

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>How many specimens the share that changes the side of each level needs.</summary>
internal static class ReclassificationSizing
{
    public static ImmutableArray<SizedFigure> Of(ReclassificationResult sides) =>
        [
            .. sides.Levels.SelectMany(level =>
                Of(
                    sides,
                    level.Level,
                    level.Counted,
                    level.Changed,
                    level.Reason is ChangesOpenReason
                )
            ),
            .. sides.Together is { } together
                ? Of(
                    sides,
                    level: null,
                    together.Counted,
                    together.Changed,
                    together.Reason is ChangesTogetherReason { Found: Verdict.Inconclusive }
                )
                : [],
        ];

    private static IEnumerable<SizedFigure> Of(
        ReclassificationResult sides,
        decimal? level,
        int counted,
        int changed,
        bool isOpen
    ) =>
        counted == 0
            ? []
            :
            [
                SizedFigure.OfShare(
                    new JudgedFigure(CriterionKind.Reclassification, sides.Criterion, level),
                    (double)(counted - changed) / counted,
                    1 - sides.LargestShare,
                    sides.ConfidenceLevel,
                    isOpen
                ),
            ];
}

using System.Collections.Immutable;

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
                        sides.Criterion,
                        (double)(level.Counted - level.Changed) / level.Counted,
                        1 - sides.LargestShare,
                        sides.ConfidenceLevel,
                        FormattableString.Invariant(
                            $"the share that changes the side of {level.Level} of criterion {sides.Criterion} is at or above the largest allowed"
                        ),
                        level.Reason.Code == "changes-open"
                    )
                ),
        ];
}

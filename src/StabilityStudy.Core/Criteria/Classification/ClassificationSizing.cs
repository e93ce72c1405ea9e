using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>How many specimens the share that keeps its class needs.</summary>
internal static class ClassificationSizing
{
    public static ImmutableArray<SizedFigure> Of(ClassificationResult classes) =>
        classes.Counted == 0
            ? []
            :
            [
                SizedFigure.OfShare(
                    classes.Criterion,
                    (double)classes.Kept / classes.Counted,
                    classes.RequiredShare,
                    classes.ConfidenceLevel,
                    $"the share that keeps its class of criterion {classes.Criterion} is at or below the required one",
                    classes.Reasons.Any(reason => reason.Code == "classes-open")
                ),
            ];
}

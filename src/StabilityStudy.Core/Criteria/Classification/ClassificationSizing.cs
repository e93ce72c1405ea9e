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
                    new JudgedFigure(CriterionKind.Classification, classes.Criterion),
                    (double)classes.Kept / classes.Counted,
                    classes.RequiredShare,
                    classes.ConfidenceLevel,
                    classes.Reasons.OfType<ClassesOpenReason>().Any()
                ),
            ];
}

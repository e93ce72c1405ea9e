namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>The fewest further changes of class with which a supported time point would no longer be supported.</summary>
internal static class ClassificationSensitivity
{
    public static IEnumerable<RobustnessLine> Of(ImmutableArray<CriterionResult> criteria) =>
        MoreChanged.Of<ClassificationResult>(
            criteria,
            classes =>
                (
                    MoreChanged.Fewest(
                        classes.Counted,
                        classes.ChangedIfMoved,
                        (decimal)(100 * classes.RequiredShare),
                        classes.ConfidenceLevel
                    ),
                    null
                )
        );
}

using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>How many specimens the share within the limit needs.</summary>
internal static class IndividualSizing
{
    public static ImmutableArray<SizedFigure> Of(IndividualResult individual) =>
        individual.Agreement.Counted == 0
            ? []
            :
            [
                SizedFigure.OfShare(
                    individual.Criterion,
                    (double)individual.Agreement.Inside / individual.Agreement.Counted,
                    individual.RequiredShare,
                    individual.ConfidenceLevel,
                    $"the share within of criterion {individual.Criterion} is at or below the required one",
                    individual.Reasons.Any(reason => reason.Code == "share-open"),
                    individual.Reasons.Any(reason => reason.Code == "point-share-no-error-control")
                ),
            ];
}

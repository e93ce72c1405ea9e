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
                    new JudgedFigure(CriterionKind.Individual, individual.Criterion),
                    (double)individual.Agreement.Inside / individual.Agreement.Counted,
                    individual.RequiredShare,
                    individual.ConfidenceLevel,
                    individual.Reasons.OfType<ShareOpenReason>().Any(),
                    individual.Reasons.OfType<ShareAloneReason>().Any()
                ),
            ];
}

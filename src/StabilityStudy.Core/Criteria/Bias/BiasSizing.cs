namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>How many specimens the mean change needs.</summary>
internal static class BiasSizing
{
    public static ImmutableArray<SizedFigure> Of(BiasResult bias) =>
        bias.Mean.TryGet(out var mean) && bias.Spread.Value is not null
            ?
            [
                SizedFigure.OfInterval(
                    new JudgedFigure(CriterionKind.Bias, bias.Criterion),
                    mean.Mean,
                    bias.Reasons.OfType<MeanAloneReason>().Any()
                        ? Scatter.None
                        : Scatter.OfMean(mean, 1),
                    (bias.LowerLimit!.Value, bias.UpperLimit!.Value),
                    bias.ConfidenceLevel,
                    bias.Reasons.Any(SizedFigure.IsInterval)
                ),
            ]
            : [];
}

using System.Collections.Immutable;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>How many specimens the mean change needs.</summary>
internal static class BiasSizing
{
    public static ImmutableArray<SizedFigure> Of(BiasResult bias) =>
        bias.Mean.TryGet(out var mean) && bias.Spread.Value is not null
            ?
            [
                SizedFigure.OfInterval(
                    bias.Criterion,
                    mean.Mean,
                    bias.Reasons.Any(reason => reason.Code == "mean-only-no-error-control")
                        ? Scatter.None
                        : Scatter.OfMean(mean, 1),
                    (bias.LowerLimit!.Value, bias.UpperLimit!.Value),
                    bias.ConfidenceLevel,
                    $"the mean change of criterion {bias.Criterion} is at or beyond its limit",
                    bias.Reasons.Any(SizedFigure.IsInterval)
                ),
            ]
            : [];
}

using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>How many specimens the change that each shape of drift predicts needs.</summary>
internal static class DriftSizing
{
    public static ImmutableArray<SizedFigure> Of(DriftCriterionResult drift) =>
        [
            .. from shape in drift.Shapes
            where shape.Predicted is not null
            select SizedFigure.OfInterval(
                new JudgedFigure(CriterionKind.Drift, drift.Criterion),
                shape.Predicted!.Change,
                Scatter.OfMean(shape.Slope.Value!.MeanSlope, Math.Abs(Growth(shape))),
                (-shape.LimitPercent, shape.LimitPercent),
                drift.ConfidenceLevel,
                SizedFigure.IsInterval(shape.Reason)
            ),
        ];

    private static double Growth(ShapeResult shape) =>
        SpecimenSlopes.Transform(shape.Shape, shape.Predicted!.Hours)
        - SpecimenSlopes.Transform(shape.Shape, shape.Slope.Value!.BaselineDelayHours);
}

using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>The change that the drift over the time points so far predicts at the planned delay; every declared shape must pass.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="ConfidenceLevel">Level of the two-sided interval.</param>
/// <param name="Shapes">The declared shapes.</param>
public sealed record DriftCriterionResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    ImmutableArray<ShapeResult> Shapes
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Drift;

    internal override LimitUse? LimitUse => null;

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        DriftSizing.Of(this);
}

/// <summary>The predicted change under one shape.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Slope">Mean slope over specimens; refused with too few.</param>
/// <param name="Predicted">Predicted change at the planned delay with its bounds, percent; null without a slope.</param>
/// <param name="LimitPercent">Allowable change, percent, upward and downward.</param>
/// <param name="Verdict">What this shape says.</param>
/// <param name="Reason">Why.</param>
public sealed record ShapeResult(
    DriftShape Shape,
    Estimate<DriftEstimate> Slope,
    DriftPoint? Predicted,
    double LimitPercent,
    Verdict Verdict,
    VerdictReason Reason
);

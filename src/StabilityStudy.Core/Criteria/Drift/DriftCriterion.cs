using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>The mean change that the drift over all time points predicts at the planned delay stays within the limit, for every declared shape.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Shapes">The declared shapes; at least one.</param>
public sealed record DriftCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ImmutableArray<Statistics.Drift.DriftShape> Shapes
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Drift;

    /// <inheritdoc/>
    public override bool JudgesMean => true;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => false;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => null;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => null;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        DriftEvaluation.Evaluate(this, Held(limit), cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => [];

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) => null;

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        allowablePercent;
}

using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The change predicted at decision levels stays within the limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Levels">Required levels in the unit of the analyte; empty means the analyte's decision levels.</param>
public sealed record DecisionLevelCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ImmutableArray<decimal> Levels
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.DecisionLevel;

    /// <inheritdoc/>
    public override bool JudgesMean => true;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => false;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => Levels;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => null;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        DecisionLevelEvaluation.Evaluate(this, Held(limit), cell);

    internal override bool IsMet(Limit? limit, CellEvidence cell) =>
        DecisionLevelEvaluation.IsMet(this, Held(limit), cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => DecisionLevelSensitivity.Of(results, cell);

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) => null;

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        allowablePercent;
}

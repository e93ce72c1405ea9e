using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>Enough single specimens stay within the allowable difference.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMinimum">Least share of patients' specimens within the limit, percent.</param>
public sealed record IndividualCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMinimum
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <summary>Whether the exact bound or the observed share alone is held to the required share.</summary>
    public DecisionRule Rule { get; init; } = DecisionRule.Confidence;

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Individual;

    /// <inheritdoc/>
    public override bool JudgesMean => false;

    internal override bool CountsEveryPair => true;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => Rule == DecisionRule.PointOnly;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => null;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => SharePercentMinimum;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        IndividualEvaluation.Evaluate(this, Held(limit), cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => IndividualSensitivity.Of(results, cell);

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) => IndividualPlanning.Power(this, allowablePercent, supposed, meanPercent);

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        IndividualPlanning.SmallestUntruePercent(this, allowablePercent, spreadPercent);
}

using StabilityStudy.Core.Planning;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The mean change stays within the allowable bias.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="Scale">Scale on which the mean is taken.</param>
public sealed record BiasCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    ChangeScale Scale
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <summary>Of so many specimens one unstable in 20 is missing in 13 of 100 studies; below it the mean carries a reservation.</summary>
    public const int FewestForRare = 40;

    /// <summary>Whether the interval or the mean alone is held to the limit.</summary>
    public DecisionRule Rule { get; init; } = DecisionRule.Confidence;

    /// <summary>Why the mean is judged without decision levels where they would be asked for; null when the protocol gives no reason.</summary>
    public string? WithoutLevels { get; init; }

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Bias;

    /// <inheritdoc/>
    public override bool JudgesMean => true;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => Rule == DecisionRule.PointOnly;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => null;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => null;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        BiasEvaluation.Evaluate(this, Held(limit), cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => BiasSensitivity.Of(results, cell);

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) =>
        this is { Rule: DecisionRule.Confidence, Scale: ChangeScale.Percent }
        && supposed
            is { Conduct.Specimens: > 1 and var specimens, TotalSdPercent: > 0 and var spread }
            ? EquivalencePower.Of(
                specimens,
                meanPercent,
                spread,
                -allowablePercent,
                allowablePercent,
                ConfidenceLevel
            )
            : null;

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        allowablePercent;
}

using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>Few enough specimens clearly change the side of a decision level. Its limits name the analytes, each without a limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMaximum">Largest share of patients' specimens that may clearly change side, percent.</param>
/// <param name="Levels">Levels in the unit of the analyte, each judged; empty means the analyte's decision levels.</param>
public sealed record ReclassificationCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMaximum,
    ImmutableArray<decimal> Levels
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <summary>How far from a level, in the unit of the analyte, one of the results must lie for a change of side to be clear; null for what imprecision explains at each level.</summary>
    public decimal? ZoneInUnit { get; init; }

    /// <summary>Which changes of side count; the others are shown, and judge nothing.</summary>
    public SideDirection Direction { get; init; }

    /// <summary>The baselines of the specimens that count; null for all.</summary>
    public NearRange? Near { get; init; }

    /// <summary>Whether beside each level all of them are judged together: a specimen that clearly changes side of any of them counts once.</summary>
    public bool LevelsTogether { get; init; }

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Reclassification;

    /// <inheritdoc/>
    public override bool JudgesMean => false;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => false;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => Levels;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => 100 - SharePercentMaximum;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        ReclassificationEvaluation.Evaluate(this, cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => ReclassificationSensitivity.Of(results);

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) => null;

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        allowablePercent;
}

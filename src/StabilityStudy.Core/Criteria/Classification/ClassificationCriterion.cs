using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>Enough specimens keep their class. Its limits name the analytes, each without a limit.</summary>
/// <inheritdoc cref="Criterion"/>
/// <param name="SharePercentMinimum">Least share of specimens that keep their class, percent.</param>
/// <param name="Cutoffs">For numeric results: ascending values that separate the classes, the upper class including its cutoff; empty for qualitative results.</param>
/// <param name="WeakPositivesMinimum">Fewest specimens whose baseline is in the class just above the lowest; below it the criterion is inconclusive.</param>
public sealed record ClassificationCriterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel,
    decimal SharePercentMinimum,
    ImmutableArray<decimal> Cutoffs,
    int WeakPositivesMinimum
) : Criterion(Id, Limits, Groups, ConfidenceLevel)
{
    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Classification;

    /// <inheritdoc/>
    public override bool JudgesMean => false;

    /// <inheritdoc/>
    public override bool IsEstimateAlone => false;

    /// <inheritdoc/>
    public override ImmutableArray<decimal>? JudgedLevels => null;

    /// <inheritdoc/>
    public override decimal? SharePercentRequired => SharePercentMinimum;

    internal override CriterionResult Evaluate(Limit? limit, CellEvidence cell) =>
        ClassificationEvaluation.Evaluate(this, cell);

    internal override IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    ) => ClassificationSensitivity.Of(results);

    internal override double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    ) => null;

    internal override double SmallestUntruePercent(double allowablePercent, double spreadPercent) =>
        allowablePercent;
}

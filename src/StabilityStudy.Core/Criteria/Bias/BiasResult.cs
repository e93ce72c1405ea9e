using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The mean change against the allowable bias.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="Scale">Scale of the figures: percent, the unit, share of the allowance, or 100·ln(y/x).</param>
/// <param name="ConfidenceLevel">Level of the two-sided interval.</param>
/// <param name="LowerLimit">Allowable mean change downward; null when the limit says nothing on this scale.</param>
/// <param name="UpperLimit">Allowable mean change upward; null likewise.</param>
/// <param name="Mean">Mean change and the interval that decided.</param>
/// <param name="Equivalence">Two one-sided tests, over specimens or over whichever clusters say least; shown, never decisive.</param>
/// <param name="Spread">Spread and skewness of the changes on this scale.</param>
public sealed record BiasResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    ChangeScale Scale,
    double ConfidenceLevel,
    double? LowerLimit,
    double? UpperLimit,
    Estimate<ClusteredMeanInterval> Mean,
    Estimate<EquivalenceTest> Equivalence,
    Estimate<SpreadSummary> Spread
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <summary>The reading that decided, of which <see cref="Mean"/> and <see cref="Spread"/> are.</summary>
    public ChangeReading Reading { get; init; }

    /// <summary>Every reading that the study calls for; as measured is the first.</summary>
    public ImmutableArray<ReadMean> Readings { get; init; } = [];

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Bias;

    /// <summary>Of some results the mean that is held to a limit in percent; null where none is.</summary>
    internal static ClusteredMeanInterval? MeanPercentOf(ImmutableArray<CriterionResult> results) =>
        results
            .OfType<BiasResult>()
            .FirstOrDefault(bias => bias.Scale == ChangeScale.Percent)
            ?.Mean.Value;

    internal override LimitUse? LimitUse => new(Limit, OfMean: true);

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        BiasSizing.Of(this);
}

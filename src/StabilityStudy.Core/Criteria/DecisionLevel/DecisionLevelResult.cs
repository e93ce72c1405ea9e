using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The change predicted at decision levels, each held to the limit; all required levels must pass.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="ConfidenceLevel">Level of each two-sided interval.</param>
/// <param name="Levels">The required levels, ascending.</param>
public sealed record DecisionLevelResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    ImmutableArray<LevelResult> Levels
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <summary>The reading of which the levels are: the one that decided.</summary>
    public ChangeReading Reading { get; init; }

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.DecisionLevel;

    internal override LimitUse? LimitUse => new(Limit, OfMean: true);

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        DecisionLevelSizing.Of(this, compared, days);
}

/// <summary>The predicted change at one decision level.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="BaselinesBelow">Baselines below the level.</param>
/// <param name="BaselinesAbove">Baselines above the level.</param>
/// <param name="Allowed">Allowable change at this level in the unit, upward and downward.</param>
/// <param name="Change">Predicted change in the unit with its interval; refused outside coverage.</param>
/// <param name="Beside">The change as the worse side of the level has it; refused where the other is.</param>
/// <param name="Verdict">What this level says.</param>
/// <param name="Reason">Why.</param>
public sealed record LevelResult(
    decimal Level,
    int BaselinesBelow,
    int BaselinesAbove,
    double Allowed,
    Estimate<BiasAtLevel> Change,
    Estimate<ChangeBesideLevel> Beside,
    Verdict Verdict,
    VerdictReason Reason
);

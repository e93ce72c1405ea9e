using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Protocol;

/// <summary>How far a result may change: percent of the baseline, an absolute amount, or the greater of both.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Percent">Percent of the baseline; null when only absolute.</param>
/// <param name="AbsoluteInUnit">Amount in the analyte's unit; null when only percent.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record Limit(string Id, decimal? Percent, decimal? AbsoluteInUnit, string Source)
{
    /// <summary>The biological variation from which the percentage follows; null where it comes from elsewhere.</summary>
    public LimitBasis? Basis { get; init; }

    /// <summary>Who chose it, and why.</summary>
    public Rationale Rationale { get; init; } = Rationale.NotStated;

    /// <summary>Limits that could have been chosen, with why they were not; nothing is concluded from them.</summary>
    public ImmutableArray<OtherLimit> Alternatives { get; init; } = [];
}

/// <summary>Biological variation as the source of a limit.</summary>
/// <param name="WithinCvPercent">CVI, within healthy persons, percent.</param>
/// <param name="BetweenCvPercent">CVG, between healthy persons, percent.</param>
/// <param name="Grade">How demanding the goal is.</param>
/// <param name="Goal">Which goal the limit is.</param>
public sealed record LimitBasis(
    decimal WithinCvPercent,
    decimal BetweenCvPercent,
    GoalGrade Grade,
    GoalKind Goal
)
{
    /// <summary>Normal quantile that leaves 2.5 % on either side.</summary>
    private const double TwoSided95 = 1.96;

    /// <summary>The goal, percent.</summary>
    public double GoalPercent
    {
        get
        {
            var goals = BiologicalVariation.Goals(
                (double)WithinCvPercent,
                (double)BetweenCvPercent,
                Grade
            );
            return Goal == GoalKind.Bias ? goals.BiasPercent : goals.TotalErrorPercent;
        }
    }

    /// <summary>By how much two results of one healthy person may differ with 95 % certainty: lognormal reference change value.</summary>
    /// <param name="betweenRunCvPercent">Between-run coefficient of variation of the method, percent.</param>
    public ReferenceChange ReferenceChangeWith(decimal betweenRunCvPercent) =>
        BiologicalVariation.LognormalChange(
            (double)betweenRunCvPercent,
            (double)WithinCvPercent,
            TwoSided95
        );
}

/// <summary>Which goal from biological variation a limit is. The zero member is the smaller.</summary>
public enum GoalKind
{
    /// <summary>Bias: for a mean.</summary>
    Bias,

    /// <summary>Total error of one result: for single specimens.</summary>
    TotalError,
}

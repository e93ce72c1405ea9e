using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>The share of specimens that keep their class: qualitative results, or numbers cut into classes.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="ConfidenceLevel">Level of each one-sided bound.</param>
/// <param name="RequiredShare">Required share, 0 to 1.</param>
/// <param name="Classes">Names of the classes, from the most negative to the most positive.</param>
/// <param name="Table">How many specimens went from which class to which.</param>
/// <param name="Counted">Specimens that count: those in the table, failed and undecidable ones.</param>
/// <param name="Kept">Specimens whose class stayed.</param>
/// <param name="Failed">Failed delayed tubes, counted as changed.</param>
/// <param name="Undecidable">Counted as changed, because a missing or unclassifiable result leaves it open.</param>
/// <param name="WeakPositives">Specimens whose baseline lies in the class just above the lowest.</param>
/// <param name="WeakPositivesMinimum">Fewest of them.</param>
/// <param name="ExpectedFromNoise">Number of changed classes expected from imprecision alone; null when it cannot be said.</param>
/// <param name="ChangedSpecimens">Codes of the specimens that count as changed.</param>
/// <param name="Bounds">Share kept, with exact bounds; refused when no specimen counts.</param>
public sealed record ClassificationResult(
    string Criterion,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    double RequiredShare,
    ImmutableArray<string> Classes,
    ImmutableArray<ClassChange> Table,
    int Counted,
    int Kept,
    int Failed,
    int Undecidable,
    int WeakPositives,
    int WeakPositivesMinimum,
    double? ExpectedFromNoise,
    ImmutableArray<string> ChangedSpecimens,
    Estimate<ProportionBounds> Bounds
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <summary>The most that would count as changed, were every change moved by what the runs of the collection days could have added; as many as do where nothing is moved.</summary>
    public int ChangedIfMoved { get; init; } = Counted - Kept;

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Classification;

    internal override LimitUse? LimitUse => null;

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        ClassificationSizing.Of(this);
}

/// <summary>How many specimens went from one class to another; places in the list of classes.</summary>
/// <param name="Baseline">Class of the baseline: its place in the list of classes, from 0.</param>
/// <param name="Delayed">Class of the delayed result, likewise.</param>
/// <param name="Count">Number of specimens.</param>
public sealed record ClassChange(int Baseline, int Delayed, int Count);

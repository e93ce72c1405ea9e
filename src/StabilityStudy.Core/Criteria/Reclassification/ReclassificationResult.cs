using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>The share of specimens that change the side of a decision level.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="ConfidenceLevel">Level of each one-sided bound.</param>
/// <param name="LargestShare">Largest share allowed to change side, 0 to 1.</param>
/// <param name="Levels">The levels, ascending; all must pass.</param>
public sealed record ReclassificationResult(
    string Criterion,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    double LargestShare,
    ImmutableArray<LevelReclassification> Levels
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <summary>The reading of which the levels are: the one that decided.</summary>
    public ChangeReading Reading { get; init; }

    /// <summary>All levels together, each specimen counted once; null where the protocol judges each by itself only. It must pass as well.</summary>
    public SidesTogether? Together { get; init; }

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Reclassification;

    internal override LimitUse? LimitUse => null;

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        ReclassificationSizing.Of(this);
}

/// <summary>Clear changes of side at one decision level. A result at the level is on its upper side.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="Counted">Specimens that count.</param>
/// <param name="MovedUp">From below the level to it or above.</param>
/// <param name="MovedDown">From the level or above to below.</param>
/// <param name="Failed">Failed delayed tubes, counted as changed.</param>
/// <param name="Undecidable">Counted as changed, because a result beyond the measuring interval or missing leaves it open.</param>
/// <param name="ExpectedFromNoise">Number expected to change side from imprecision alone; null when the protocol states none.</param>
/// <param name="ChangedSpecimens">Codes of the specimens that count as changed.</param>
/// <param name="Bounds">Share changed, with exact bounds; refused when no specimen counts.</param>
/// <param name="Verdict">What this level says.</param>
/// <param name="Reason">Why.</param>
public sealed record LevelReclassification(
    decimal Level,
    int Counted,
    int MovedUp,
    int MovedDown,
    int Failed,
    int Undecidable,
    double? ExpectedFromNoise,
    ImmutableArray<string> ChangedSpecimens,
    Estimate<ProportionBounds> Bounds,
    Verdict Verdict,
    VerdictReason Reason
)
{
    /// <summary>How far from the level one of the results must lie for a change of side to be clear, in the unit of the analyte.</summary>
    public required decimal Zone { get; init; }

    /// <summary>Specimens with results on different sides, clear or not; shown, never decisive.</summary>
    public required int OnOtherSide { get; init; }

    /// <summary>Which changes count; clear ones to the other side are in their number above and not in <see cref="Changed"/>.</summary>
    public SideDirection Direction { get; init; }

    /// <summary>Specimens that count as having changed side.</summary>
    public int Changed =>
        (Direction == SideDirection.Down ? 0 : MovedUp)
        + (Direction == SideDirection.Up ? 0 : MovedDown)
        + Failed
        + Undecidable;

    /// <summary>The most that would count as changed, were every change moved by what the runs of the collection days could have added; as many as do where nothing is moved.</summary>
    public int ChangedIfMoved { get; init; } = MovedUp + MovedDown + Failed + Undecidable;
}

/// <summary>Specimens that clearly change side of any of several decision levels.</summary>
/// <param name="Levels">The levels, in the unit of the analyte, ascending.</param>
/// <param name="Counted">Specimens that count.</param>
/// <param name="Changed">Those that count as having changed side of any level, failed and undecidable ones included.</param>
/// <param name="ChangedIfMoved">The most that would, were every change moved by what the runs of the collection days could have added.</param>
/// <param name="ChangedSpecimens">Codes of the specimens that count as changed.</param>
/// <param name="Bounds">Share changed, with exact bounds; refused when no specimen counts.</param>
/// <param name="Verdict">What they say.</param>
/// <param name="Reason">Why.</param>
public sealed record SidesTogether(
    ImmutableArray<decimal> Levels,
    int Counted,
    int Changed,
    int ChangedIfMoved,
    ImmutableArray<string> ChangedSpecimens,
    Estimate<ProportionBounds> Bounds,
    Verdict Verdict,
    VerdictReason Reason
);

using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Drift;
using StabilityStudy.Core.Looks;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Analysis;

/// <summary>The time points of one analyte, patient group and storage, concluded in order.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="Window">The supported window; null when none is supported.</param>
/// <param name="Drift">Change with time, as description.</param>
/// <param name="Cells">The time points in order.</param>
public sealed record Sequence(
    string Analyte,
    string Group,
    string Storage,
    SupportedWindow? Window,
    DriftResult Drift,
    ImmutableArray<Cell> Cells
)
{
    /// <summary>How far the collection of the planned specimens is.</summary>
    public CollectionStanding Collection { get; init; } = new(0, 0, CollectionState.Incomplete);

    /// <summary>Every window that is stated: that of all, and where there are several instruments that of each.</summary>
    public ImmutableArray<SupportedWindow> Windows =>
        [.. Parts.Select(part => part.Window).Prepend(Window).OfType<SupportedWindow>()];

    /// <summary>Each instrument by itself, where the specimens were tested on several; else empty.</summary>
    public ImmutableArray<ScopePart> Parts { get; init; } = [];
}

/// <summary>One time point of a sequence.</summary>
/// <param name="Key">Analyte, group, storage and time point.</param>
/// <param name="Conclusion">The conclusion, with regard to the earlier time points.</param>
/// <param name="OwnConclusion">What this time point's data alone would say.</param>
/// <param name="Disposition">What became of every specimen.</param>
/// <param name="Criteria">What each criterion says.</param>
/// <param name="Estimates">The describing estimates.</param>
/// <param name="Robustness">What could overturn the conclusion.</param>
/// <param name="Pairs">Every specimen with what was measured.</param>
public sealed record Cell(
    CellKey Key,
    Conclusion Conclusion,
    Conclusion OwnConclusion,
    Disposition Disposition,
    ImmutableArray<CriterionResult> Criteria,
    CellEstimates Estimates,
    ImmutableArray<RobustnessLine> Robustness,
    ImmutableArray<PairRecord> Pairs
)
{
    /// <summary>Specimens that changed the side of a decision level, for each level of the analyte.</summary>
    public ImmutableArray<SideChange> SideChanges { get; init; } = [];

    /// <summary>What keeps the cell from a conclusion although its criteria give one: too many pairs left out, a run without a control. Empty when nothing does.</summary>
    public ImmutableArray<VerdictReason> Doubts { get; init; } = [];

    /// <summary>What the control results say; null when the protocol keeps controls elsewhere.</summary>
    public ControlEvidence? Controls { get; init; }

    /// <summary>How many specimens would decide; null unless the cell's own conclusion is inconclusive.</summary>
    public MoreSpecimens? MoreSpecimens { get; init; }

    /// <summary>The mean change that a criterion holds to a limit in percent; null where none does.</summary>
    public ClusteredMeanInterval? DecidingMeanPercent => BiasResult.MeanPercentOf(Criteria);
}

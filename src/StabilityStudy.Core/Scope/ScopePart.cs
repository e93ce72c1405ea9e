using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Scope;

/// <summary>
/// One instrument of a study over several, concluded on its own specimens, those whose baseline was tested on it. A window holds for all of them only
/// where each supports it by itself: their mean could hide one that does not.
/// </summary>
/// <param name="Code">Its code; empty where it is not recorded.</param>
/// <param name="Window">The window that its own specimens support; null when none.</param>
/// <param name="TimePoints">Its time points in order.</param>
public sealed record ScopePart(
    string Code,
    SupportedWindow? Window,
    ImmutableArray<ScopeTimePoint> TimePoints
);

/// <summary>One time point on one instrument.</summary>
/// <param name="TimePoint">The planned delay.</param>
/// <param name="Conclusion">The conclusion, with regard to the earlier time points.</param>
/// <param name="OwnConclusion">What this time point's data alone would say.</param>
/// <param name="Received">Specimens meant to be tested there.</param>
/// <param name="Counted">Those that count for a share.</param>
/// <param name="Criteria">What each criterion says of its own specimens.</param>
/// <param name="Doubts">What keeps it from a conclusion although its criteria give one.</param>
public sealed record ScopeTimePoint(
    TimePoint TimePoint,
    Conclusion Conclusion,
    Conclusion OwnConclusion,
    int Received,
    int Counted,
    ImmutableArray<CriterionResult> Criteria,
    ImmutableArray<VerdictReason> Doubts
)
{
    /// <summary>The mean change that a criterion holds to a limit in percent; null where none does.</summary>
    public ClusteredMeanInterval? DecidingMeanPercent => BiasResult.MeanPercentOf(Criteria);

    /// <summary>What could overturn its conclusion.</summary>
    public ImmutableArray<RobustnessLine> Robustness { get; init; } = [];

    /// <summary>How many of its specimens would decide; null unless its own conclusion is inconclusive.</summary>
    public MoreSpecimens? MoreSpecimens { get; init; }
}

using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Conclusions;

/// <summary>What the control results say about the runs of a cell.</summary>
/// <param name="Runs">Runs in which the cell's pairs were tested.</param>
/// <param name="RunsInControl">Those with at least one control, every control of which lies within its range.</param>
/// <param name="RunsWithoutControl">Codes of runs without a control result.</param>
/// <param name="RunsOutOfControl">Codes of runs with a control outside its range.</param>
/// <param name="Bridging">Shift of the bridging plasma from the runs of baselines to those of delayed tubes, percent; null when none was tested.</param>
public sealed record ControlEvidence(
    int Runs,
    int RunsInControl,
    ImmutableArray<string> RunsWithoutControl,
    ImmutableArray<string> RunsOutOfControl,
    BridgingShift? Bridging
);

/// <summary>Shift of stable plasma between runs: what the runs, not the delay, add to the change.</summary>
/// <param name="Plasmas">Bridging plasmas tested in both kinds of run.</param>
/// <param name="BaselineResults">Results in runs of baselines.</param>
/// <param name="DelayedResults">Results in runs of delayed tubes.</param>
/// <param name="MeanPercent">Mean shift, percent of the baseline runs' mean, one value a collection day; refused with too few.</param>
public sealed record BridgingShift(
    int Plasmas,
    int BaselineResults,
    int DelayedResults,
    Estimate<MeanInterval> MeanPercent
);

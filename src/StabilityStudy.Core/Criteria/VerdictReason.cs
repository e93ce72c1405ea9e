using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria;

/// <summary>Why a verdict is what it is, with the numbers that its sentence needs; the sentence is the report's. Reasons of one kind of criterion alone stand in its folder.</summary>
/// <param name="StaysWithMore">Whether it stays however many specimens there are.</param>
public abstract record VerdictReason(bool StaysWithMore = false);

/// <summary>A figure could not be computed.</summary>
/// <param name="Why">Code and reason of the method.</param>
public sealed record NotComputableReason(NotComputable Why) : VerdictReason;

/// <summary>No specimen can be counted.</summary>
public sealed record NothingCountedReason : VerdictReason;

/// <summary>Too few collection days: a run's error does not average out over specimens.</summary>
/// <param name="Days">Collection days.</param>
/// <param name="Required">Fewest.</param>
public sealed record TooFewDaysReason(int Days, int Required) : VerdictReason(StaysWithMore: true);

/// <summary>Too few runs of one kind: a run's error does not average out over specimens.</summary>
/// <param name="Of">Baseline runs or delayed runs.</param>
/// <param name="Runs">How many.</param>
/// <param name="Required">Fewest.</param>
public sealed record TooFewRunsReason(IntervalSource Of, int Runs, int Required)
    : VerdictReason(StaysWithMore: true);

/// <summary>Specimens without a pair of measured results, which no individual criterion counts.</summary>
/// <param name="Specimens">How many.</param>
public sealed record UncountedPairsReason(int Specimens) : VerdictReason(StaysWithMore: true);

/// <summary>Where the interval of a figure lies against its limits.</summary>
/// <param name="Place">Inside, wholly beyond, or reaching the limit.</param>
/// <param name="Figure">What it is the interval of.</param>
public sealed record IntervalReason(IntervalPlace Place, IntervalFigure Figure) : VerdictReason;

/// <summary>The protocol states no decision level of the analyte.</summary>
public sealed record NoLevelReason : VerdictReason;

/// <summary>A level is outside what the baselines cover.</summary>
/// <param name="Level">The level.</param>
/// <param name="Gap">What is missing.</param>
public sealed record LevelOutsideCoverageReason(LevelInUnit Level, CoverageGap Gap)
    : VerdictReason(StaysWithMore: true);

/// <summary>A criterion that is met by count would not be, were every change moved by what the days' runs could have added.</summary>
/// <param name="Percent">By how much they are moved: percent of the allowable difference where specimens within it are counted, else percent of the baseline.</param>
/// <param name="Then">What would then be.</param>
public sealed record OpenIfRunsMovedReason(double Percent, MovedOutcome Then)
    : VerdictReason(StaysWithMore: true);

/// <summary>What would be with every change moved. One kind of criterion each.</summary>
public abstract record MovedOutcome;

/// <summary>So many would be outside.</summary>
/// <param name="Outside">Outside.</param>
/// <param name="Counted">Of so many.</param>
/// <param name="SharePercent">The required share that this leaves open.</param>
public sealed record MoreOutsideIfMoved(int Outside, int Counted, decimal SharePercent)
    : MovedOutcome;

/// <summary>The changes of side would no longer be shown to be few.</summary>
public sealed record SidesOpenIfMoved : MovedOutcome;

/// <summary>The classes would no longer be shown to be kept.</summary>
public sealed record ClassesOpenIfMoved : MovedOutcome;

/// <summary>A level with the unit of its analyte.</summary>
/// <param name="Level">The level.</param>
/// <param name="Unit">The unit as it is shown.</param>
public sealed record LevelInUnit(decimal Level, string Unit);

/// <summary>Where an interval lies. The zero member is the safe answer.</summary>
public enum IntervalPlace
{
    /// <summary>It reaches the limit.</summary>
    ReachesLimit,

    /// <summary>Wholly beyond the limit.</summary>
    Outside,

    /// <summary>Strictly inside the limit.</summary>
    Inside,
}

/// <summary>What an interval is of.</summary>
public abstract record IntervalFigure;

/// <summary>The mean change.</summary>
public sealed record MeanChangeFigure : IntervalFigure;

/// <summary>The change predicted at a level.</summary>
/// <param name="Level">The level.</param>
public sealed record ChangeAtLevelFigure(LevelInUnit Level) : IntervalFigure;

/// <summary>The change that drift predicts.</summary>
public sealed record PredictedChangeFigure : IntervalFigure;

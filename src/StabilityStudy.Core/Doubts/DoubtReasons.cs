namespace StabilityStudy.Core.Doubts;

/// <summary>The run is not recorded, so no control vouches for it.</summary>
/// <param name="Specimens">Codes of the specimens.</param>
public sealed record RunNotRecordedReason(ImmutableArray<string> Specimens) : VerdictReason;

/// <summary>Runs without a control within its range.</summary>
/// <param name="Runs">Their codes.</param>
public sealed record RunWithoutControlReason(ImmutableArray<string> Runs) : VerdictReason;

/// <summary>Runs with a control outside its range.</summary>
/// <param name="Runs">Their codes.</param>
public sealed record ControlOutOfRangeReason(ImmutableArray<string> Runs) : VerdictReason;

/// <summary>The first test comes beyond twice the standard window of analyte and group.</summary>
/// <param name="First">The first time point.</param>
/// <param name="Standard">What today's rule allows.</param>
public sealed record FirstTestTooLateReason(TimePoint First, TimeSpan Standard)
    : VerdictReason(StaysWithMore: true);

/// <summary>Specimens are still to come.</summary>
/// <param name="Usable">Specimens with a valid baseline.</param>
/// <param name="Planned">The planned number.</param>
public sealed record CollectionNotCompleteReason(int Usable, int Planned)
    : VerdictReason(StaysWithMore: true);

/// <summary>Specimens were added after the data had been looked at.</summary>
/// <param name="LookedAt">When they were first looked at.</param>
/// <param name="Added">How many were added, which do not count.</param>
public sealed record AddedAfterLookReason(DateTimeOffset LookedAt, int Added)
    : VerdictReason(StaysWithMore: true);

/// <summary>The data were looked at before the planned number was complete, and the specimens that were still to come do not count or never came.</summary>
/// <param name="LookedAt">When they were looked at.</param>
/// <param name="Usable">Specimens with a valid baseline at that time.</param>
/// <param name="Planned">The number planned at that time.</param>
public sealed record StoppedAfterLookReason(DateTimeOffset LookedAt, int Usable, int Planned)
    : VerdictReason(StaysWithMore: true);

/// <summary>More specimens left out than allowed.</summary>
/// <param name="LeftOut">How many.</param>
/// <param name="Received">Of so many.</param>
/// <param name="PercentMaximum">Largest share allowed.</param>
public sealed record TooManyLeftOutReason(int LeftOut, int Received, decimal PercentMaximum)
    : VerdictReason;

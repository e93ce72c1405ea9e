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

/// <summary>More specimens left out than allowed.</summary>
/// <param name="LeftOut">How many.</param>
/// <param name="Received">Of so many.</param>
/// <param name="PercentMaximum">Largest share allowed.</param>
public sealed record TooManyLeftOutReason(int LeftOut, int Received, decimal PercentMaximum)
    : VerdictReason;

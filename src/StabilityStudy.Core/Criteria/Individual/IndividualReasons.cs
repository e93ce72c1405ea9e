namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>Fewer than the required share stay within the allowable difference.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ShareRefutedReason(decimal SharePercent) : VerdictReason;

/// <summary>Whether the required share stays within is open.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ShareOpenReason(decimal SharePercent) : VerdictReason;

/// <summary>At least the required share stays within.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ShareShownReason(decimal SharePercent) : VerdictReason;

/// <summary>Too few pairs were measured both times to show the share.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record TooFewMeasuredReason(decimal SharePercent)
    : VerdictReason(StaysWithMore: true);

/// <summary>The share is reached only with specimens whose results both lie beyond a limit of measurement.</summary>
/// <param name="SharePercent">The required share.</param>
/// <param name="AgreeingBeyond">How many such specimens.</param>
public sealed record AgreeingBeyondLimitReason(decimal SharePercent, int AgreeingBeyond)
    : VerdictReason(StaysWithMore: true);

/// <summary>The rule holds the observed share alone to the required one.</summary>
public sealed record ShareAloneReason : VerdictReason;

/// <summary>Undecidable specimens count as outside.</summary>
/// <param name="Undecidable">How many.</param>
/// <param name="Counted">Of so many.</param>
/// <param name="LowerBoundIfInside">Lower bound of the share, were they inside, 0 to 1.</param>
public sealed record UndecidableReason(int Undecidable, int Counted, double LowerBoundIfInside)
    : VerdictReason;

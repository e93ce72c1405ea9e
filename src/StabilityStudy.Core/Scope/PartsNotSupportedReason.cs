namespace StabilityStudy.Core.Scope;

/// <summary>Not every instrument of a study over several supports the time point on its own specimens.</summary>
/// <param name="Parts">Those that do not.</param>
public sealed record PartsNotSupportedReason(ImmutableArray<PartStanding> Parts) : VerdictReason;

/// <summary>What one instrument concludes of a time point on its own.</summary>
/// <param name="Code">Its code; empty where it is not recorded.</param>
/// <param name="Conclusion">What its own specimens conclude.</param>
public sealed record PartStanding(string Code, Conclusion Conclusion);

/// <summary>Of several instruments some specimens name none, so that nobody can tell to which they belong.</summary>
/// <param name="Specimens">How many.</param>
public sealed record InstrumentNotRecordedReason(int Specimens) : VerdictReason;

/// <summary>Pairs whose two results come from different instruments, so that nothing is shown of either alone.</summary>
/// <param name="Specimens">Codes of the specimens.</param>
public sealed record TestedOnTwoInstrumentsReason(ImmutableArray<string> Specimens) : VerdictReason;

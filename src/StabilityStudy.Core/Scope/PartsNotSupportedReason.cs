namespace StabilityStudy.Core.Scope;

/// <summary>Not every instrument or site of a study over several supports the time point on its own specimens.</summary>
/// <param name="Kind">Whether they are instruments or sites.</param>
/// <param name="Parts">Those that do not.</param>
public sealed record PartsNotSupportedReason(ScopeKind Kind, ImmutableArray<PartStanding> Parts)
    : VerdictReason;

/// <summary>What one instrument or site concludes of a time point on its own.</summary>
/// <param name="Code">Its code; empty where it is not recorded.</param>
/// <param name="Conclusion">What its own specimens conclude.</param>
public sealed record PartStanding(string Code, Conclusion Conclusion);

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>Drift is measured in percent, and the limit is not in percent alone.</summary>
public sealed record LimitNotInPercentReason : VerdictReason;

/// <summary>The protocol declares no shape.</summary>
public sealed record NoShapeReason : VerdictReason;

/// <summary>The declared shapes lead to different verdicts.</summary>
public sealed record ShapesDisagreeReason : VerdictReason;

/// <summary>All specimens drift by the same amount.</summary>
public sealed record SameDriftReason() : VerdictReason(StaysWithMore: true);

/// <summary>The measured mean changes do not follow a declared shape.</summary>
/// <param name="TimePoints">Where they do not.</param>
public sealed record ShapeMisfitReason(ImmutableArray<TimePoint> TimePoints)
    : VerdictReason(StaysWithMore: true);

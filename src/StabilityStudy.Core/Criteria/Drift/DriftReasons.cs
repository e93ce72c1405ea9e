using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>Drift is measured in percent, and the limit is not in percent alone.</summary>
public sealed record LimitNotInPercentReason() : VerdictReason(ChangeOnScale.LimitNotOnScale);

/// <summary>The protocol declares no shape.</summary>
public sealed record NoShapeReason() : VerdictReason("no-shape-declared");

/// <summary>The declared shapes lead to different verdicts.</summary>
public sealed record ShapesDisagreeReason() : VerdictReason("shapes-disagree");

/// <summary>All specimens drift by the same amount.</summary>
public sealed record SameDriftReason()
    : VerdictReason(AssumptionCode.ZeroSpread, StaysWithMore: true);

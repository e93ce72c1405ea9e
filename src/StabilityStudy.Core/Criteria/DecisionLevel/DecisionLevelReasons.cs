namespace StabilityStudy.Core.Criteria.DecisionLevel;

/// <summary>The pairs lie on one line.</summary>
public sealed record PairsOnOneLineReason() : VerdictReason(StaysWithMore: true);

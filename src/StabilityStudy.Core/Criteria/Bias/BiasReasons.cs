namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The rule holds the mean alone to the limit.</summary>
public sealed record MeanAloneReason : VerdictReason;

/// <summary>All changes are the same.</summary>
/// <param name="HalfIncrement">Half a reporting increment on the scale of the changes.</param>
public sealed record SameChangesReason(double HalfIncrement) : VerdictReason(StaysWithMore: true);

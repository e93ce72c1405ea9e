namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The rule holds the mean alone to the limit.</summary>
public sealed record MeanAloneReason : VerdictReason;

/// <summary>The value at collection of some specimens is not above zero.</summary>
/// <param name="Specimens">Their codes.</param>
public sealed record NoValueAtCollectionReason(ImmutableArray<string> Specimens)
    : VerdictReason(StaysWithMore: true);

/// <summary>All changes are the same.</summary>
/// <param name="HalfIncrement">Half a reporting increment on the scale of the changes.</param>
public sealed record SameChangesReason(double HalfIncrement) : VerdictReason(StaysWithMore: true);

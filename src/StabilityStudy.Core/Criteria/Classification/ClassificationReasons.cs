namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>At least the required share keeps its class.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ClassesKeptReason(decimal SharePercent) : VerdictReason;

/// <summary>Fewer than the required share keep their class.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ClassesLostReason(decimal SharePercent) : VerdictReason;

/// <summary>Whether the required share keeps its class is open.</summary>
/// <param name="SharePercent">The required share.</param>
public sealed record ClassesOpenReason(decimal SharePercent) : VerdictReason;

/// <summary>Too few specimens in the class that a delay loses first.</summary>
/// <param name="WeakPositives">How many there are.</param>
/// <param name="Required">Fewest.</param>
public sealed record TooFewWeakPositivesReason(int WeakPositives, int Required)
    : VerdictReason(StaysWithMore: true);

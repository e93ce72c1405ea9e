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

/// <summary>The change depends on the level, and at an end of the range it is not shown to be inside the limit.</summary>
/// <param name="Level">The end: 1.645 SDs of the logarithms of the levels from their mean.</param>
/// <param name="Unit">Unit of the level.</param>
/// <param name="PredictedPercent">Change predicted there.</param>
/// <param name="LowerPercent">Lower end of its interval.</param>
/// <param name="UpperPercent">Upper end of its interval.</param>
public sealed record LevelDependentReason(
    double Level,
    string Unit,
    double PredictedPercent,
    double LowerPercent,
    double UpperPercent
) : VerdictReason(StaysWithMore: true);

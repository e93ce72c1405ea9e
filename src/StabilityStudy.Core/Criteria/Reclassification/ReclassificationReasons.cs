namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>At most the allowed share changes side of the levels.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Levels">The levels.</param>
/// <param name="Unit">Their unit as it is shown.</param>
public sealed record ChangesFewReason(
    decimal SharePercent,
    ImmutableArray<decimal> Levels,
    string Unit
) : VerdictReason;

/// <summary>More than the allowed share changes side.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Level">The level.</param>
public sealed record ChangesManyReason(decimal SharePercent, LevelInUnit Level) : VerdictReason;

/// <summary>Whether at most the allowed share changes side is open.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Level">The level.</param>
public sealed record ChangesOpenReason(decimal SharePercent, LevelInUnit Level) : VerdictReason;

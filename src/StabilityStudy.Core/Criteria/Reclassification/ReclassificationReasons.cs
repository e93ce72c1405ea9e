namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>At most the allowed share changes side of the levels.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Levels">The levels.</param>
/// <param name="Unit">Their unit as it is shown.</param>
public sealed record ChangesFewReason(
    decimal SharePercent,
    ImmutableArray<decimal> Levels,
    string Unit
) : VerdictReason
{
    /// <summary>Which changes count.</summary>
    public SideDirection Direction { get; init; }
}

/// <summary>More than the allowed share changes side.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Level">The level.</param>
public sealed record ChangesManyReason(decimal SharePercent, LevelInUnit Level) : VerdictReason
{
    /// <summary>Which changes count.</summary>
    public SideDirection Direction { get; init; }
}

/// <summary>Whether at most the allowed share changes side is open.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Level">The level.</param>
public sealed record ChangesOpenReason(decimal SharePercent, LevelInUnit Level) : VerdictReason
{
    /// <summary>Which changes count.</summary>
    public SideDirection Direction { get; init; }
}

/// <summary>Whether at most the allowed share changes side of any of several levels, each specimen counted once.</summary>
/// <param name="SharePercent">The allowed share.</param>
/// <param name="Levels">The levels.</param>
/// <param name="Unit">Their unit as it is shown.</param>
/// <param name="Found">Met where the data show it, not met where they show the contrary.</param>
public sealed record ChangesTogetherReason(
    decimal SharePercent,
    ImmutableArray<decimal> Levels,
    string Unit,
    Verdict Found
) : VerdictReason
{
    /// <summary>Which changes count.</summary>
    public SideDirection Direction { get; init; }
}

/// <summary>Fewer specimens than the protocol asks for have a baseline near the levels, so that what did not change tells too little.</summary>
/// <param name="Counted">How many have.</param>
/// <param name="Required">Fewest.</param>
/// <param name="Lowest">Lowest baseline of the range.</param>
/// <param name="Highest">Highest baseline of the range.</param>
/// <param name="Unit">Unit as it is shown.</param>
public sealed record TooFewNearReason(
    int Counted,
    int Required,
    decimal Lowest,
    decimal Highest,
    string Unit
) : VerdictReason;

namespace StabilityStudy.Core.Locking;

/// <summary>What an amendment changed at one place of the protocol.</summary>
/// <param name="Key">The place: "group.none.specimens".</param>
/// <param name="Before">What stood there, as written; null when nothing did.</param>
/// <param name="After">What stands there, as written; null when nothing does.</param>
/// <param name="Kind">What it bears on.</param>
public sealed record ProtocolDifference(
    string Key,
    string? Before,
    string? After,
    DifferenceKind Kind
)
{
    /// <summary>The place in words: "group none: planned number of specimens".</summary>
    public string Meaning { get; init; } = "";
}

/// <summary>What a difference bears on. The zero member is the cautious answer.</summary>
public enum DifferenceKind
{
    /// <summary>What is concluded and how: criteria, limits, times, eligibility.</summary>
    Rule,

    /// <summary>The planned number of specimens.</summary>
    Number,

    /// <summary>The version, a name or who signs: nothing that is computed.</summary>
    Label,
}

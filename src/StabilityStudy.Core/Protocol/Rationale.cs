namespace StabilityStudy.Core.Protocol;

/// <summary>Who chose a limit or a required share, and why: words that only the laboratory can give.</summary>
/// <param name="ChosenBy">Code or role of whoever chose it; null where the protocol does not state it.</param>
/// <param name="Reason">Why it was chosen; null where the protocol does not state it.</param>
public sealed record Rationale(string? ChosenBy, string? Reason)
{
    /// <summary>That of a protocol which says neither.</summary>
    public static Rationale NotStated { get; } = new(null, null);
}

using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>What the person who decides makes of the conclusions.</summary>
public enum DecisionKind
{
    /// <summary>The windows are not put into force.</summary>
    Decline,

    /// <summary>A shorter window somewhere, or windows with conditions.</summary>
    Conditions,

    /// <summary>The windows as the report states them.</summary>
    Approve,
}

/// <summary>A decision; it becomes a part of what is signed.</summary>
/// <param name="Kind">What is decided, all rows together.</param>
/// <param name="Reason">Why it is declined, or why a window is shorter than supported; null where nothing is said. In statements of format 1 the conditions too.</param>
public sealed record ApproverDecision(DecisionKind Kind, string? Reason)
{
    /// <summary>The decision on each row of the conclusions, in their order; empty in statements of format 1, which decide on all at once.</summary>
    public ImmutableArray<WindowDecision> Windows { get; init; } = [];

    /// <summary>The conditions, which the rows name by number from 1.</summary>
    public ImmutableArray<string> Conditions { get; init; } = [];

    /// <summary>First day in force; null for the time of the signature.</summary>
    public DateOnly? Effective { get; init; }

    /// <summary>Day by which the windows are to be reviewed; null where none is set.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>The decision on this study that this one comes after; null for the first.</summary>
    public EarlierDecision? Earlier { get; init; }
}

/// <summary>The decision on one row of the conclusions.</summary>
/// <param name="Row">The row: for what, and what the evidence supports.</param>
/// <param name="Approved">The window put into force, never longer than supported; null leaves today's rule.</param>
/// <param name="Interim">A rule shorter than today's until more is known; null for none.</param>
/// <param name="Conditions">Numbers of the conditions, from 1.</param>
public sealed record WindowDecision(
    ConcludedWindow Row,
    TimeSpan? Approved,
    TimeSpan? Interim,
    ImmutableArray<int> Conditions
)
{
    /// <summary>Whether less is put into force than the evidence supports, or on conditions.</summary>
    public bool IsLess => Approved != Row.Supported || Interim is not null || !Conditions.IsEmpty;
}

/// <summary>A decision that was signed before on the same study.</summary>
/// <param name="At">When it was recorded.</param>
/// <param name="By">By whom.</param>
/// <param name="Words">The decision in words.</param>
/// <param name="Reason">Why it is decided again.</param>
public sealed record EarlierDecision(DateTimeOffset At, string By, string Words, string Reason);

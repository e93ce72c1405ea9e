namespace StabilityStudy.Pipeline.Signing;

/// <summary>What the person who decides makes of the conclusions.</summary>
public enum DecisionKind
{
    /// <summary>The windows are not put into force.</summary>
    Decline,

    /// <summary>A shorter window, or the window with conditions.</summary>
    Conditions,

    /// <summary>The windows as the report states them.</summary>
    Approve,
}

/// <summary>A decision; it becomes a part of what is signed.</summary>
/// <param name="Kind">What is decided.</param>
/// <param name="Text">The shorter window, the conditions, or why it is declined; null for a plain approval.</param>
public sealed record ApproverDecision(DecisionKind Kind, string? Text)
{
    /// <summary>The decision as the stamp shows it.</summary>
    public string InWords() =>
        Kind switch
        {
            DecisionKind.Approve => "Decision: approved",
            DecisionKind.Conditions => $"Decision: approved with conditions: {Text}",
            DecisionKind.Decline => $"Decision: declined: {Text}",
        };
}

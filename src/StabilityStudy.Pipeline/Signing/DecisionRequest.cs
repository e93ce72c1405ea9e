namespace StabilityStudy.Pipeline.Signing;

/// <summary>What the person who decides asks for, before it is held against the report.</summary>
/// <param name="Approves">Whether windows are approved; else everything is declined.</param>
/// <param name="Reason">Why it is declined, or why a window is shorter than supported; null where nothing is said.</param>
public sealed record DecisionRequest(bool Approves, string? Reason)
{
    /// <summary>Windows other than the supported ones: a row and its window, or "none".</summary>
    public ImmutableArray<RowText> Windows { get; init; } = [];

    /// <summary>Rules shorter than today's: a row and its time.</summary>
    public ImmutableArray<RowText> Interim { get; init; } = [];

    /// <summary>Conditions for every approved window.</summary>
    public ImmutableArray<string> Conditions { get; init; } = [];

    /// <summary>Conditions for one row.</summary>
    public ImmutableArray<RowText> RowConditions { get; init; } = [];

    /// <summary>First day in force; null for the time of the signature.</summary>
    public DateOnly? Effective { get; init; }

    /// <summary>Day by which the windows are to be reviewed; null to set none.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>Why it is decided again; needed where a decision was signed before.</summary>
    public string? Again { get; init; }

    /// <summary>Every supported window is approved.</summary>
    public static DecisionRequest Approval { get; } = new(true, null);

    /// <summary>Nothing is approved.</summary>
    /// <param name="reason">Why.</param>
    public static DecisionRequest Declined(string reason) => new(false, reason);
}

/// <summary>A row of the conclusions by its name, and what is said of it.</summary>
/// <param name="Row">"aPTT/ufh": codes of analyte and group, and of storage and instrument where the study has several.</param>
/// <param name="Text">What is said of it.</param>
public sealed record RowText(string Row, string Text);

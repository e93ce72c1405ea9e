namespace StabilityStudy.Reporting.Model;

/// <summary>The conclusions as page 1 shows them: one row a decision, from what follows over the evidence and what speaks against it to the place of the decision.</summary>
/// <param name="Head">The heads of the evidence.</param>
/// <param name="Rows">The rows, the gravest first.</param>
/// <param name="Note">What the figures of all rows have in common.</param>
internal sealed record DecisionTable(
    EvidenceHead Head,
    ImmutableArray<DecisionRow> Rows,
    string Note
) : Block
{
    /// <summary>What contradicts conclusions with the rows it concerns, a sentence each, for a page that has no room beside the rows.</summary>
    public ImmutableArray<string> Contradictions { get; init; } = [];

    /// <summary>Whether each row has its place for the decision; with too many for a page the one who decides has all of them in the box.</summary>
    public bool IsDecidedInRows { get; init; } = true;

    public const string Caption = "Table 1. Conclusion";
    public const string Weigh =
        "What to weigh before approving stands below the figures, gravest first";
    public const string Decision = "Decision";

    /// <summary>Before the line on which a decision is written by hand.</summary>
    public const string Prompt = "Decision:";

    /// <summary>Before what cannot wait for the rest of the report.</summary>
    public const string DecideNow = "Decide now:";
}

/// <summary>The heads of the evidence.</summary>
internal sealed record EvidenceHead(string Waited, string Change, string Share, string Conclusion);

/// <summary>One decision.</summary>
/// <param name="Number">Its place among the rows on which the one who decides signs, from 0.</param>
/// <param name="Name">Whose specimens, and which analyte where there are several.</param>
/// <param name="Shape">Shape of the conclusion.</param>
/// <param name="Conclusion">The conclusion with the number of its reservations.</param>
/// <param name="Facts">Today's rule and what else belongs to the claim.</param>
/// <param name="Evidence">The deciding figures, a line a time point.</param>
/// <param name="Remarks">What else decided or was left out.</param>
/// <param name="Reservations">What speaks against it, the gravest first.</param>
/// <param name="Hint">Below the line on which the decision is written by hand.</param>
/// <param name="Brief">All of it in one sentence, where there is no room for the row.</param>
internal sealed record DecisionRow(
    int Number,
    string Name,
    VerdictShape Shape,
    string Conclusion,
    string Facts,
    ImmutableArray<EvidenceLine> Evidence,
    ImmutableArray<string> Remarks,
    ImmutableArray<Reservation> Reservations,
    string Hint,
    string Brief
)
{
    /// <summary>Name and conclusion as short as can be, where rows stand in a grid: "aPTT ufh: 6 h".</summary>
    public string Code { get; init; } = "";

    /// <summary>Analyte and group, as headings of the report name them.</summary>
    public string? Subject { get; init; }

    /// <summary>What cannot wait for the rest of the report; null where nothing is urgent.</summary>
    public string? DecideNow { get; init; }
}

/// <summary>The figures of one time point.</summary>
/// <param name="Waited">The time point.</param>
/// <param name="Change">The mean change with its interval.</param>
/// <param name="Share">The specimens within their limit, with the bound of their share.</param>
/// <param name="Shape">Shape of the conclusion.</param>
/// <param name="Conclusion">The conclusion in words.</param>
/// <param name="IsMuted">Shown only, not concluded on.</param>
internal sealed record EvidenceLine(
    string Waited,
    string Change,
    string Share,
    VerdictShape Shape,
    string Conclusion,
    bool IsMuted
);

/// <summary>Something that speaks against a conclusion or limits it.</summary>
/// <param name="Point">Its point, a short sentence; may be empty.</param>
/// <param name="Text">The sentence behind it; may be empty.</param>
/// <param name="Contradicts">Whether it speaks against the conclusion itself.</param>
internal sealed record Reservation(string Point, string Text, bool Contradicts)
{
    /// <summary>The point alone, where there is one.</summary>
    public string InBrief() => Point.Length == 0 ? Text : Point;

    /// <summary>Both in one text.</summary>
    public string InFull =>
        Point.Length == 0 ? Text
        : Text.Length == 0 ? Point
        : $"{Point} {Text}";
}

/// <summary>A paragraph on a tint that opens with its subject: what a reader must not overlook.</summary>
internal sealed record KeyMessage(string Subject, string Text) : Block
{
    /// <summary>Whether it stands on white, in the size of a caption.</summary>
    public bool IsPlain { get; init; }

    /// <summary>Whether it is the caption of the figures that follow: it then stands on white, and with them.</summary>
    public bool IsCaption { get; init; }
}

namespace StabilityStudy.Reporting.Model;

/// <summary>Places for signatures, two in a row, or beside the place of whoever decides; the drawing returns their rectangles.</summary>
internal sealed record SignatureBoxes(ImmutableArray<SignatureBox> Boxes) : Block;

/// <summary>One place for a signature.</summary>
/// <param name="Role">Who signs, for example "Approver".</param>
/// <param name="Meaning">What the signature means, for example "approves its conclusion".</param>
/// <param name="State">What is printed while the place is empty, for example "NOT SIGNED".</param>
internal sealed record SignatureBox(string Role, string Meaning, string State)
{
    /// <summary>Choices to tick by hand, one a line; empty when the signature decides nothing.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>Rows of the conclusions, each with a line to write the approved window on; empty when the signature decides nothing.</summary>
    public ImmutableArray<string> Rows { get; init; } = [];

    /// <summary>Lines of small print that a signature shows in this place at most; 0 for one that decides nothing.</summary>
    public int PrintedLines { get; init; }
}

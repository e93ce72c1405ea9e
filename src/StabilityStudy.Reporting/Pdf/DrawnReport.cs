namespace StabilityStudy.Reporting.Pdf;

/// <summary>A drawn report.</summary>
/// <param name="Pdf">The file, as PDFsharp writes it: its random identifiers and dates are still to be rewritten.</param>
/// <param name="PageCount">Number of pages, at least 1.</param>
/// <param name="SignatureRectangles">Where each signature belongs, in the order of the model.</param>
public sealed record DrawnReport(
    ReadOnlyMemory<byte> Pdf,
    int PageCount,
    ImmutableArray<SignatureRectangle> SignatureRectangles
)
{
    /// <summary>On which page each section starts; empty for pages without sections.</summary>
    public SectionPages Pages { get; init; } = SectionPages.Unknown;

    /// <summary>Where the decision on each row belongs, in the order of the rows on which somebody signs; empty for a document without any.</summary>
    public ImmutableArray<SignatureRectangle> DecisionRectangles { get; init; } = [];
}

/// <summary>The inside of a signature box, in points from the lower left corner of its page.</summary>
/// <param name="Role">Role of the signatory.</param>
/// <param name="Page">Page number, counted from 1.</param>
/// <param name="Left">Left edge.</param>
/// <param name="Bottom">Lower edge.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
public sealed record SignatureRectangle(
    string Role,
    int Page,
    double Left,
    double Bottom,
    double Width,
    double Height
);

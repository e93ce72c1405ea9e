namespace StabilityStudy.SignedPdf.Signing;

/// <summary>A signature field to be put into a document, empty until somebody signs.</summary>
/// <param name="Name">Name of the field, without a point; one of its kind in the document.</param>
/// <param name="PageNumber">Page it lies on, from 1.</param>
/// <param name="Rectangle">Where on the page.</param>
/// <param name="Description">What the field is, for those who cannot see it and as a tooltip.</param>
public sealed record ReservedField(
    string Name,
    int PageNumber,
    PageRectangle Rectangle,
    string Description
)
{
    /// <summary>Areas inside it, in the page's coordinates, on each of which a part of a stamp is shown; empty for one that a stamp fills as a whole.</summary>
    public ImmutableArray<PageRectangle> Areas { get; init; } = [];
}

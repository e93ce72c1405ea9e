namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A sequence of objects of any kinds (ISO 32000-1:2008, 7.3.6).</summary>
internal sealed record PdfArray(ImmutableArray<PdfObject> Items) : PdfObject;

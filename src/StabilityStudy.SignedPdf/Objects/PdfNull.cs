namespace StabilityStudy.SignedPdf.Objects;

/// <summary>The null object; a dictionary entry with this value is the same as no entry (ISO 32000-1:2008, 7.3.9).</summary>
internal sealed record PdfNull : PdfObject;

namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A whole number (ISO 32000-1:2008, 7.3.3).</summary>
internal sealed record PdfInteger(long Value) : PdfObject;

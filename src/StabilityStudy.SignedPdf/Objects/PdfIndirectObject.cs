namespace StabilityStudy.SignedPdf.Objects;

/// <summary>An object with the number and generation by which others refer to it (ISO 32000-1:2008, 7.3.10).</summary>
public sealed record PdfIndirectObject(PdfReference Reference, PdfObject Value);

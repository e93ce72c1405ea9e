namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A reference to an indirect object by its number and generation (ISO 32000-1:2008, 7.3.10).</summary>
public sealed record PdfReference(int Number, int Generation) : PdfObject;

namespace StabilityStudy.SignedPdf.Objects;

/// <summary>The object <c>true</c> or <c>false</c> (ISO 32000-1:2008, 7.3.2).</summary>
internal sealed record PdfBoolean(bool Value) : PdfObject;

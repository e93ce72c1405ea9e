namespace StabilityStudy.SignedPdf.Objects;

/// <summary>One entry of a dictionary.</summary>
/// <param name="Name">The key, without slash and escapes, each character one byte.</param>
/// <param name="Value">The value under the key.</param>
public sealed record PdfEntry(string Name, PdfObject Value);

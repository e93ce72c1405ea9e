using System.Runtime.InteropServices;

namespace StabilityStudy.SignedPdf.Objects;

/// <summary>One entry of a dictionary. A value, not an object of its own: a report has hundreds of thousands.</summary>
/// <param name="Name">The key, without slash and escapes, each character one byte.</param>
/// <param name="Value">The value under the key.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PdfEntry(string Name, PdfObject Value);

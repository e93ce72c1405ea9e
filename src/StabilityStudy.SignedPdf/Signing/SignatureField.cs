namespace StabilityStudy.SignedPdf.Signing;

/// <summary>One signature field found in a document.</summary>
/// <param name="Name">Its full name, parts joined by points.</param>
/// <param name="Reference">Its object; null when the field is written inside its parent.</param>
/// <param name="Dictionary">The field.</param>
/// <param name="ValueReference">What the entry /V refers to; null when it is written in place or absent.</param>
/// <param name="Value">The signature; null while the field is empty.</param>
internal sealed record SignatureField(
    string Name,
    PdfReference? Reference,
    PdfDictionary Dictionary,
    PdfReference? ValueReference,
    PdfDictionary? Value
);

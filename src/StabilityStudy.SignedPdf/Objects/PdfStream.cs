namespace StabilityStudy.SignedPdf.Objects;

/// <summary>
/// A dictionary followed by bytes (ISO 32000-1:2008, 7.3.8).
/// The entry /Length is written from <paramref name="Encoded"/>, whatever the dictionary says.
/// </summary>
/// <param name="Dictionary">Describes the bytes: filters, type and so on.</param>
/// <param name="Encoded">The bytes as they lie in the file, filters not undone. Must not be changed by anybody.</param>
internal sealed record PdfStream(PdfDictionary Dictionary, ReadOnlyMemory<byte> Encoded) : PdfObject
{
    /// <summary>The same bytes under this dictionary; itself where it is the same one.</summary>
    public PdfStream WithDictionary(PdfDictionary dictionary) =>
        ReferenceEquals(dictionary, Dictionary) ? this : this with { Dictionary = dictionary };
}

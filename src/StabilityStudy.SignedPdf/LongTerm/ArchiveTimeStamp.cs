using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>
/// A time stamp over the whole document so far (ISO 32000-2, 12.8.5; ETSI EN 319 142-1, clause 5.4.3). It shows that all signatures, time stamps and validation data before it existed then, also when their
/// certificates have expired since.
/// </summary>
internal static class ArchiveTimeStamp
{
    public const string SubFilter = "ETSI.RFC3161";

    private static readonly PdfName Type = new("DocTimeStamp");

    private static PdfDictionary Unsigned { get; } =
        SignatureDictionary.Emptied(
            PdfDictionary.Of(
                new("Type", Type),
                new("Filter", new PdfName("Adobe.PPKLite")),
                new("SubFilter", new PdfName(SubFilter))
            )
        );

    /// <summary>Whether a field is filled with a time stamp and no signature, as its dictionary says.</summary>
    public static bool IsIn(SignatureField field) =>
        field.Value?.Find("Type") is PdfName name && name == Type;

    /// <summary>The first empty field; null when all are used or the document was made without.</summary>
    public static SignatureField? FreeField(PdfDocument document) =>
        SignatureForm
            .Fields(document)
            ?.FirstOrDefault(field =>
                ArchiveFields.Holds(field.Name)
                && field.Reference is not null
                && field.Dictionary.Find("V") is null
            );

    /// <summary>The document followed by the revision, with zeros in place of the time stamp and nines in place of its offsets.</summary>
    /// <param name="document">The document.</param>
    /// <param name="field">The empty field to fill.</param>
    /// <param name="number">Number of the object with the time stamp.</param>
    public static byte[] Append(PdfDocument document, SignatureField field, out int number)
    {
        var objects = new Stamps.NewObjects(document);
        var value = objects.Add(Unsigned);
        number = value.Number;
        return PdfFileWriter.Append(
            document,
            [
                .. objects
                    .Added.Append(new(field.Reference!, field.Dictionary.With("V", value)))
                    .OrderBy(static entry => entry.Reference.Number),
            ]
        );
    }
}

using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>The dictionary that holds a signature (ISO 32000-1:2008, 12.8.1; ETSI EN 319 142-1, clause 5).</summary>
internal static class SignatureDictionary
{
    public const string SubFilter = "ETSI.CAdES.detached";

    /// <summary>Names that begin so are free for private use (ISO 32000-1:2008, annex E).</summary>
    public const string Statement = "XXStatement";

    /// <summary>Room for a signature with certificates and a time stamp: twice to three times what one takes.</summary>
    public const int ContentsLength = 16 * 1024;

    // Ten digits, as many as an offset in a cross-reference table has.
    private const long OffsetPlaceholder = 9_999_999_999;

    /// <summary>The dictionary before signing: zeros in place of the signature, and nines in place of the offsets.</summary>
    public static PdfDictionary Unsigned(SignatureContent request, bool certifies)
    {
        var dictionary = PdfDictionary.Of(
            new("Type", new PdfName("Sig")),
            new("Filter", new PdfName("Adobe.PPKLite")),
            new("SubFilter", new PdfName(SubFilter)),
            new("Name", PdfString.OfText(request.SignerName)),
            new("Reason", PdfString.OfText(request.Reason)),
            new("M", PdfDate.Of(request.SigningTime))
        );
        if (request.Location is { } location)
        {
            dictionary = dictionary.With("Location", PdfString.OfText(location));
        }

        if (request.Statement is { } statement)
        {
            dictionary = dictionary.With(Statement, PdfString.OfText(statement));
        }

        return Emptied(
            certifies ? dictionary.With("Reference", new PdfArray([Certification])) : dictionary
        );
    }

    /// <summary>The dictionary with zeros in place of the signature, and nines in place of the offsets.</summary>
    public static PdfDictionary Emptied(PdfDictionary signature)
    {
        var placeholder = new PdfInteger(OffsetPlaceholder);
        return signature
            .With(
                "ByteRange",
                new PdfArray([new PdfInteger(0), placeholder, placeholder, placeholder])
            )
            .With("Contents", new PdfString([.. new byte[ContentsLength]]));
    }

    /// <summary>What the first signature allows afterwards: P 2, filling in fields and signing (12.8.2.2).</summary>
    public static PdfDictionary Certification { get; } =
        PdfDictionary.Of(
            new("Type", new PdfName("SigRef")),
            new("TransformMethod", new PdfName("DocMDP")),
            new(
                "TransformParams",
                PdfDictionary.Of(
                    new("Type", new PdfName("TransformParams")),
                    new("P", new PdfInteger(2)),
                    new("V", new PdfName("1.2"))
                )
            )
        );
}

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Refuses a file that holds signatures: rewriting would break every one.</summary>
internal static class SignatureGuard
{
    public static PdfFailure? Check(ObjectGraph graph)
    {
        var isSigned = false;
        graph.MapDictionaries(dictionary =>
        {
            isSigned |= dictionary.Find("ByteRange") is not null;
            return dictionary;
        });
        return isSigned
            ? new PdfFailure(null, "The file holds a signature, which rewriting would break.")
            : null;
    }
}

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Removes what tells when and by which run a document was drawn: dates, and the random names of annotations.</summary>
internal static class TraceRemoval
{
    private static readonly string[] Everywhere = ["CreationDate", "ModDate", "LastModified"];
    private static readonly string[] InAnnotations = ["M", "NM"];

    public static ObjectGraph Apply(ObjectGraph graph) =>
        graph.MapDictionaries(static dictionary =>
        {
            var cleaned = Everywhere.Aggregate(dictionary, WithoutText);
            return cleaned.Find("Rect") is not null && cleaned.Find("Subtype") is not null
                ? InAnnotations.Aggregate(cleaned, WithoutText)
                : cleaned;
        });

    // Only texts: in a table of resources the same word may be the name of a font or a form.
    private static PdfDictionary WithoutText(PdfDictionary dictionary, string name) =>
        dictionary.Find(name) is PdfString ? dictionary.Without(name) : dictionary;
}

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Makes the descent of every font negative, as the standard asks (ISO 32000-1:2008, table 122) and some writers do not.</summary>
internal static class FontDescents
{
    public static ObjectGraph Apply(ObjectGraph graph) =>
        graph.MapDictionaries(static dictionary =>
            dictionary.Find("FontName") is null
                ? dictionary
                : dictionary.Find("Descent") switch
                {
                    PdfInteger { Value: > 0 } integer => dictionary.With(
                        "Descent",
                        new PdfInteger(-integer.Value)
                    ),
                    PdfReal { Value: > 0 } real => dictionary.With(
                        "Descent",
                        new PdfReal("-" + real.Text.TrimStart('+'))
                    ),
                    _ => dictionary,
                }
        );
}

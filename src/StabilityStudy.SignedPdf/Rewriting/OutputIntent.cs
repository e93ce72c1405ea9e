namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Says which colors the red, green and blue of the pages are, so that they look and print alike in years to come
/// (ISO 32000-1:2008, 14.11.5). What the file conforms to stands in its XMP.
/// </summary>
internal static class OutputIntent
{
    private const string Key = "OutputIntents";

    /// <summary>The document with an intent of sRGB; one that has an intent keeps it.</summary>
    public static ObjectGraph Apply(ObjectGraph graph)
    {
        if (graph.Catalog.Find(Key) is not null)
        {
            return graph;
        }

        graph = graph.Add(
            new PdfStream(
                PdfDictionary.Of(
                    new("N", new PdfInteger(3)),
                    new("Alternate", new PdfName("DeviceRGB"))
                ),
                SrgbProfile.Bytes()
            ),
            out var profile
        );
        graph = graph.Add(
            PdfDictionary.Of(
                new("Type", new PdfName("OutputIntent")),
                new("S", new PdfName("GTS_PDFA1")),
                new("OutputConditionIdentifier", PdfString.OfText(SrgbProfile.Identifier)),
                new("Info", PdfString.OfText(SrgbProfile.Identifier)),
                new("DestOutputProfile", profile)
            ),
            out var intent
        );
        return graph.WithCatalog(graph.Catalog.With(Key, new PdfArray([intent])));
    }
}

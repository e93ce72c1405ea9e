namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Gives each font that is embedded in part a tag that follows from its program instead of from chance.</summary>
internal static class FontTags
{
    private static readonly string[] ProgramKeys = ["FontFile", "FontFile2", "FontFile3"];

    /// <summary>The graph with the tags replaced; its streams must be compressed anew already.</summary>
    public static ObjectGraph Apply(ObjectGraph graph) =>
        graph.MapDictionaries(dictionary =>
        {
            if (
                dictionary.Find("FontName") is not null
                && TagOfDescriptor(graph, dictionary) is { } descriptorTag
            )
            {
                return SubsetTag.Replace(dictionary, "FontName", descriptorTag);
            }

            return
                dictionary.Find("BaseFont") is not null
                && TagOfFont(graph, dictionary) is { } fontTag
                ? SubsetTag.Replace(dictionary, "BaseFont", fontTag)
                : dictionary;
        });

    private static string? TagOfFont(ObjectGraph graph, PdfDictionary font)
    {
        var holder = graph.Resolve(font.Find("DescendantFonts"))
            is PdfArray { Items: [var descendant] }
            ? graph.Resolve(descendant) as PdfDictionary
            : font;
        return graph.Resolve(holder?.Find("FontDescriptor")) is PdfDictionary descriptor
            ? TagOfDescriptor(graph, descriptor)
            : null;
    }

    private static string? TagOfDescriptor(ObjectGraph graph, PdfDictionary descriptor) =>
        ProgramKeys
            .Select(key => graph.Resolve(descriptor.Find(key)))
            .OfType<PdfStream>()
            .FirstOrDefault()
            is { } program
            ? SubsetTag.Of(program.Encoded.Span)
            : null;
}

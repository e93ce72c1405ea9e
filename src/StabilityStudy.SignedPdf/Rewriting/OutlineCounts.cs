namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Counts the bookmarks below each bookmark, as the standard asks (ISO 32000-1:2008, tables 152 and 153) and some writers do
/// not. A bookmark without a count is shown closed, so the count added is that of a closed one.
/// </summary>
internal static class OutlineCounts
{
    private const string Key = "Count";

    public static ObjectGraph Apply(ObjectGraph graph)
    {
        var root = graph.Resolve(graph.Catalog.Find("Outlines"));
        return graph with
        {
            Objects =
            [
                .. graph.Objects.Select(value =>
                    value is PdfDictionary item && IsUncounted(item)
                        ? item.With(
                            Key,
                            new PdfInteger(
                                ReferenceEquals(item, root)
                                    ? Children(graph, item)
                                    : -Children(graph, item)
                            )
                        )
                        : value
                ),
            ],
        };
    }

    private static bool IsUncounted(PdfDictionary item) =>
        item.Find(Key) is null
        && item.Find("First") is PdfReference
        && item.Find("Last") is PdfReference;

    /// <summary>The number of bookmarks in the chain below; a chain that runs into itself ends there.</summary>
    private static int Children(ObjectGraph graph, PdfDictionary item)
    {
        var seen = new HashSet<PdfReference>();
        var next = item.Find("First");
        while (next is PdfReference reference && seen.Add(reference))
        {
            next = (graph.Resolve(reference) as PdfDictionary)?.Find("Next");
        }

        return seen.Count;
    }
}

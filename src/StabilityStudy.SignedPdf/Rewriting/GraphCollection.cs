namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Keeps what can be reached from the trailer and numbers it in the order of reaching: breadth first, the entries of a
/// dictionary in the order of their names. So numbers follow from the content alone.
/// </summary>
internal static class GraphCollection
{
    /// <param name="trailer">Where to begin.</param>
    /// <param name="find">The object under a reference; null when there is none.</param>
    public static ObjectGraph Collect(PdfDictionary trailer, Func<PdfReference, PdfObject?> find)
    {
        var references = new Dictionary<PdfReference, PdfReference>();
        var reached = new List<PdfObject>();

        PdfObject Renumber(PdfReference reference)
        {
            var target = find(reference);
            for (var hop = 0; target is PdfReference next; hop++)
            {
                reference = next;
                target = hop < ReadingLimits.ReferenceHops ? find(next) : null;
            }

            if (target is null or PdfNull)
            {
                return new PdfNull();
            }

            if (!references.TryGetValue(reference, out var renumbered))
            {
                reached.Add(WithoutLength(target));
                renumbered = new PdfReference(reached.Count, 0);
                references.Add(reference, renumbered);
            }

            return renumbered;
        }

        var renumberedTrailer = NestedObjects.MapReferences(trailer, Renumber);
        for (var index = 0; index < reached.Count; index++)
        {
            reached[index] = NestedObjects.MapReferences(reached[index], Renumber);
        }

        return new ObjectGraph([.. reached], renumberedTrailer);
    }

    // The length is written anew; an object that only held it must not be reached.
    private static PdfObject WithoutLength(PdfObject value) =>
        value is PdfStream stream
            ? stream with
            {
                Dictionary = stream.Dictionary.Without("Length"),
            }
            : value;
}

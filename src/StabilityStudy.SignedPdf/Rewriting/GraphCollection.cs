namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Keeps what can be reached from the trailer and numbers it in the order of reaching: breadth first, the entries of a
/// dictionary in the order of their names. So numbers follow from the content alone.
/// </summary>
internal static class GraphCollection
{
    /// <summary>What the catalog of a file leads to, or why the file cannot be read.</summary>
    /// <param name="file">The bytes of the file.</param>
    public static PdfResult<ObjectGraph> Read(ReadOnlyMemory<byte> file) =>
        PdfDocumentReader.Read(file).TryGet(out var document, out var failure)
            ? new(
                Collect(
                    PdfDictionary.Of(
                        new PdfEntry("Root", document.Trailer.Find("Root") ?? new PdfNull())
                    ),
                    document.Find
                )
            )
            : new(failure);

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
                renumbered = renumbered == reference ? reference : renumbered;
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
            ? stream.WithDictionary(stream.Dictionary.Without("Length"))
            : value;
}

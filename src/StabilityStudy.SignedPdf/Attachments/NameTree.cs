namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>Reads and writes name trees (ISO 32000-1:2008, 7.9.6).</summary>
internal static class NameTree
{
    private const int MostNodes = 10_000;
    private const int DeepestLevel = 32;

    /// <summary>All names and values in the order of the tree; a failure for a node of another form, and for a circle.</summary>
    public static PdfResult<List<(PdfString Name, PdfObject Value)>> Read(
        PdfObject? root,
        Func<PdfObject?, PdfObject?> resolve
    )
    {
        var found = new List<(PdfString, PdfObject)>();
        var pending = new Stack<(PdfObject? Node, int Level)>();
        pending.Push((root, 0));
        for (var nodes = 0; pending.TryPop(out var next); nodes++)
        {
            if (
                nodes >= MostNodes
                || next.Level > DeepestLevel
                || resolve(next.Node) is not PdfDictionary node
            )
            {
                return Refused();
            }

            if (resolve(node.Find("Kids")) is PdfArray kids)
            {
                for (var i = kids.Items.Length - 1; i >= 0; i--)
                {
                    pending.Push((kids.Items[i], next.Level + 1));
                }
            }

            if (resolve(node.Find("Names")) is PdfArray names && !AddNames(names, resolve, found))
            {
                return Refused();
            }
        }

        return new(found);
    }

    /// <summary>A tree of one node; the names must be in order.</summary>
    public static PdfDictionary Write(IEnumerable<(PdfString Name, PdfReference Value)> names) =>
        PdfDictionary.Of(
            new PdfEntry(
                "Names",
                new PdfArray([
                    .. names.SelectMany(static name => (PdfObject[])[name.Name, name.Value]),
                ])
            )
        );

    private static bool AddNames(
        PdfArray names,
        Func<PdfObject?, PdfObject?> resolve,
        List<(PdfString, PdfObject)> found
    )
    {
        if (names.Items.Length % 2 != 0 || found.Count + (names.Items.Length / 2) > MostNodes)
        {
            return false;
        }

        for (var i = 0; i < names.Items.Length; i += 2)
        {
            if (resolve(names.Items[i]) is not PdfString name)
            {
                return false;
            }

            found.Add((name, names.Items[i + 1]));
        }

        return true;
    }

    private static PdfResult<List<(PdfString Name, PdfObject Value)>> Refused() =>
        new(new PdfFailure(null, "A name tree is damaged, or larger than the bounds allow."));
}

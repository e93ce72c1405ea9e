namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Finds the pages of a document in their order (ISO 32000-1:2008, 7.7.3).</summary>
internal static class PageTree
{
    private const int MostNodes = 100_000;

    /// <summary>References to the pages; a node reached twice counts once, and nothing beyond the bound is looked at.</summary>
    public static ImmutableArray<PdfReference> Pages(
        PdfObject? root,
        Func<PdfObject?, PdfObject?> resolve
    )
    {
        var pages = ImmutableArray.CreateBuilder<PdfReference>();
        var seen = new HashSet<PdfReference>();
        var pending = new Stack<PdfObject?>();
        pending.Push(root);
        while (pending.TryPop(out var next) && seen.Count < MostNodes)
        {
            if (
                next is not PdfReference reference
                || !seen.Add(reference)
                || resolve(reference) is not PdfDictionary node
            )
            {
                continue;
            }

            if (resolve(node.Find("Kids")) is PdfArray kids)
            {
                foreach (var kid in kids.Items.Reverse())
                {
                    pending.Push(kid);
                }
            }
            else
            {
                pages.Add(reference);
            }
        }

        return pages.DrainToImmutable();
    }
}

using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>On which pages the bookmarks of a document lead (ISO 32000-1:2008, 12.3.3), so that a section can be named in a file that is not drawn again.</summary>
public static class OutlinePages
{
    private const int MostBookmarks = 10_000;

    /// <summary>Titles of the bookmarks of the first level with their pages, counted from 1; the first of equal titles counts, and one that leads to no page is left out.</summary>
    public static ImmutableDictionary<string, int> Of(PdfDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var pages = PageTree.Pages(document.Catalog.Find("Pages"), document.Resolve);
        var found = ImmutableDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        var seen = new HashSet<PdfReference>();
        var next = document.ResolveDictionary(document.Catalog.Find("Outlines"))?.Find("First");
        while (
            next is PdfReference reference
            && seen.Count < MostBookmarks
            && seen.Add(reference)
            && document.ResolveDictionary(reference) is { } bookmark
        )
        {
            if (
                document.Resolve(bookmark.Find("Title")) is PdfString title
                && document.Resolve(bookmark.Find("Dest"))
                    is PdfArray { Items: [PdfReference page, ..] }
                && pages.IndexOf(page) is >= 0 and var index
            )
            {
                found.TryAdd(title.ToText(), index + 1);
            }

            next = bookmark.Find("Next");
        }

        return found.ToImmutable();
    }
}

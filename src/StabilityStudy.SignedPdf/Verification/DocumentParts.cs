namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Tells to which part of a document each object belongs, the most telling part first.</summary>
internal static class DocumentParts
{
    // Entries that lead back from a part to the page or parent around it.
    private static readonly HashSet<string> Backwards = new(StringComparer.Ordinal)
    {
        "P",
        "Parent",
        "Pg",
        "Dest",
    };

    public static Dictionary<int, DocumentPart> Of(PdfDocument document)
    {
        var parts = new Dictionary<int, DocumentPart>();
        if (document.Trailer.Find("Root") is PdfReference root)
        {
            parts.TryAdd(root.Number, DocumentPart.Catalog);
        }

        var catalog = document.Catalog;
        Mark(document, parts, document.Trailer.Find("Info"), DocumentPart.Metadata);
        Mark(document, parts, catalog.Find("Metadata"), DocumentPart.Metadata);
        Mark(document, parts, catalog.Find("AcroForm"), DocumentPart.Form);
        Mark(document, parts, catalog.Find("AF"), DocumentPart.Attachments);
        Mark(document, parts, catalog.Find("Pages"), DocumentPart.Pages);
        Mark(
            document,
            parts,
            document.ResolveDictionary(catalog.Find("Names"))?.Find("EmbeddedFiles"),
            DocumentPart.Attachments
        );
        Mark(document, parts, catalog, DocumentPart.Other);
        return parts;
    }

    private static void Mark(
        PdfDocument document,
        Dictionary<int, DocumentPart> parts,
        PdfObject? from,
        DocumentPart part
    )
    {
        var pending = new Stack<PdfObject>();
        if (from is not null)
        {
            pending.Push(from);
        }

        while (pending.TryPop(out var next))
        {
            switch (next)
            {
                case PdfReference reference
                    when document.Find(reference) is { } target
                        && parts.TryAdd(reference.Number, part):
                    pending.Push(target);
                    break;
                case PdfArray array:
                    foreach (var item in array.Items)
                    {
                        pending.Push(item);
                    }

                    break;
                case PdfStream stream:
                    pending.Push(stream.Dictionary);
                    break;
                case PdfDictionary dictionary:
                    foreach (var entry in dictionary.Entries)
                    {
                        if (!Backwards.Contains(entry.Name))
                        {
                            pending.Push(entry.Value);
                        }
                    }

                    break;
                default:
                    break;
            }
        }
    }
}

using System.Text;
using StabilityStudy.SignedPdf.Xmp;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Replaces what a file says about itself, in both places where readers look: XMP and the information dictionary.</summary>
internal static class DocumentMetadata
{
    /// <param name="graph">The document.</param>
    /// <param name="options">What to say.</param>
    /// <param name="identity">Names this content and no other.</param>
    public static ObjectGraph Apply(ObjectGraph graph, RewriteOptions options, Guid identity)
    {
        // The header says 1.7; an entry that says otherwise, and what other programs left for themselves, is dropped.
        var catalog = graph.Catalog.Without("Version").Without("PieceInfo");
        graph = graph
            .Add(Xmp(options, identity), out var metadata)
            .Add(Information(options), out var information);
        catalog = catalog.With("Metadata", metadata);
        return (graph with { Trailer = graph.Trailer.With("Info", information) }).WithCatalog(
            options.Language is { } language
                ? catalog.With("Lang", PdfString.OfText(language))
                : catalog
        );
    }

    /// <summary>What the file says in XMP.</summary>
    public static PdfStream Xmp(RewriteOptions options, Guid identity) =>
        new(
            PdfDictionary.Of(
                new("Type", new PdfName("Metadata")),
                new("Subtype", new PdfName("XML"))
            ),
            Encoding.UTF8.GetBytes(XmpPacket.Write(options, identity))
        );

    private static PdfDictionary Information(RewriteOptions options)
    {
        var information = PdfDictionary.Of(
            new("Title", PdfString.OfText(options.Title)),
            new("Creator", PdfString.OfText(options.CreatorTool)),
            new("Producer", PdfString.OfText(options.CreatorTool))
        );
        if (options.Author is { } author)
        {
            information = information.With("Author", PdfString.OfText(author));
        }

        return options.Date is { } date
            ? information.With("CreationDate", PdfDate.Of(date)).With("ModDate", PdfDate.Of(date))
            : information;
    }
}

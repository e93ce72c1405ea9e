using System.Security.Cryptography;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Writes a drawn document anew so that its bytes depend on what it shows, holds and is told to say, and on nothing else: not on clock,
/// chance, machine, processor or version of the run-time library. Rewriting the result with the same options gives the same bytes.
/// </summary>
public static class DeterministicRewrite
{
    /// <summary>The rewritten file, or why the drawn one cannot be used: it cannot be read, a stream is damaged, or it is signed.</summary>
    /// <param name="drawn">The bytes of the drawn file.</param>
    /// <param name="options">What to attach and to say.</param>
    /// <exception cref="ArgumentException">Two attachments have the same name.</exception>
    public static PdfResult<ReadOnlyMemory<byte>> Rewrite(
        ReadOnlyMemory<byte> drawn,
        RewriteOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!PdfDocumentReader.Read(drawn).TryGet(out var document, out var failure))
        {
            return new(failure);
        }

        var trailer = PdfDictionary.Of(
            new PdfEntry("Root", document.Trailer.Find("Root") ?? new PdfNull())
        );
        var collected = GraphCollection.Collect(trailer, document.Find);
        if (SignatureGuard.Check(collected) is { } signed)
        {
            return new(signed);
        }

        if (
            !StreamRecompression
                .Apply(OutputIntent.Apply(WithoutMetadata(collected)))
                .TryGet(out var graph, out failure)
        )
        {
            return new(failure);
        }

        graph = TraceRemoval.Apply(OutlineCounts.Apply(FontDescents.Apply(FontTags.Apply(graph))));
        if (
            !AttachmentTree
                .Apply(graph, options.Attachments, options.Date)
                .TryGet(out graph, out failure)
        )
        {
            return new(failure);
        }

        graph = IdenticalObjects.Merge(graph);

        // The identity is that of the file with zeros in its place.
        var unidentified = Finish(graph, options, new byte[SHA256.HashSizeInBytes]);
        return new(Finish(graph, options, SHA256.HashData(unidentified)));
    }

    private static ObjectGraph WithoutMetadata(ObjectGraph graph)
    {
        var bare = graph.WithCatalog(graph.Catalog.Without("Metadata"));
        return GraphCollection.Collect(bare.Trailer, reference => bare.Resolve(reference));
    }

    private static byte[] Finish(ObjectGraph graph, RewriteOptions options, byte[] hash)
    {
        var described = DocumentMetadata.Apply(graph, options, ContentIdentity.Uuid(hash));
        var final = GraphCollection.Collect(
            described.Trailer,
            reference => described.Resolve(reference)
        );
        var identifier = new PdfString([.. hash.AsSpan(0, ContentIdentity.FileIdentifierLength)]);
        return PdfFileWriter.WritePacked(
            [
                .. final.Objects.Select(
                    static (value, index) => new PdfIndirectObject(new(index + 1, 0), value)
                ),
            ],
            final.Trailer.With("ID", new PdfArray([identifier, identifier]))
        );
    }
}

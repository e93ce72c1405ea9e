using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Writes a drawn document anew so that its bytes depend on what it shows, holds and is told to say, and on nothing else: not on clock,
/// chance, machine, processor or version of the run-time library. Rewriting the result with the same options gives the same bytes.
/// </summary>
public static class DeterministicRewrite
{
    /// <summary>The rewritten file, or why the drawn one cannot be used: it cannot be read, a stream is damaged, it is signed, or it has no place for a signature field.</summary>
    /// <param name="drawn">The bytes of the drawn file.</param>
    /// <param name="options">What to attach and to say.</param>
    /// <exception cref="ArgumentException">Two attachments have the same name, or the fields are none that could be (see <see cref="SignatureFields"/>).</exception>
    // Compiled with optimization at once: each step's graph is then let go as soon as the next step has it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static PdfResult<ReadOnlyMemory<byte>> Rewrite(
        ReadOnlyMemory<byte> drawn,
        RewriteOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!GraphCollection.Read(drawn).TryGet(out var graph, out var failure))
        {
            return new(failure);
        }

        if (SignatureGuard.Check(graph) is { } signed)
        {
            return new(signed);
        }

        if (
            options.Fields is { } fields
            && !SignatureFields.Reserve(graph, fields).TryGet(out graph, out failure)
        )
        {
            return new(failure);
        }

        if (
            !StreamRecompression
                .Apply(OutputIntent.Apply(WithoutMetadata(graph)))
                .TryGet(out graph, out failure)
        )
        {
            return new(failure);
        }

        graph = TraceRemoval.Apply(OutlineCounts.Apply(FontDescents.Apply(FontTags.Apply(graph))));
        return AttachmentTree
            .Apply(graph, options.Attachments, options.Date)
            .TryGet(out graph, out failure)
            ? new(Write(IdenticalObjects.Merge(graph), options))
            : new(failure);
    }

    private static ObjectGraph WithoutMetadata(ObjectGraph graph)
    {
        var bare = graph.WithCatalog(graph.Catalog.Without("Metadata"));
        return GraphCollection.Collect(bare.Trailer, reference => bare.Resolve(reference));
    }

    /// <summary>The file, whose identity is the hash of the same file with zeros in its place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ReadOnlyMemory<byte> Write(ObjectGraph graph, RewriteOptions options)
    {
        byte[] hash = new byte[SHA256.HashSizeInBytes];
        var described = DocumentMetadata.Apply(graph, options, ContentIdentity.Uuid(hash));
        var final = GraphCollection.Collect(
            described.Trailer,
            reference => described.Resolve(reference)
        );
        var packed = ObjectStreams.Pack(final.Numbered);
        var unidentified = PdfFileWriter.WritePacked(packed, Identified(final.Trailer, hash));
        hash = SHA256.HashData(unidentified.Span);
        return PdfFileWriter.WritePacked(
            packed.With(
                (PdfReference)final.Catalog.Find("Metadata")!,
                DocumentMetadata.Xmp(options, ContentIdentity.Uuid(hash))
            ),
            Identified(final.Trailer, hash)
        );
    }

    private static PdfDictionary Identified(PdfDictionary trailer, byte[] hash)
    {
        var identifier = new PdfString([.. hash.AsSpan(0, ContentIdentity.FileIdentifierLength)]);
        return trailer.With("ID", new PdfArray([identifier, identifier]));
    }
}

using StabilityStudy.SignedPdf.Compression;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Compresses every stream anew, so that its bytes depend on what it holds and not on the program that compressed it before.
/// Streams whose outermost filter is another one than /FlateDecode (pictures) stay as they are.
/// </summary>
internal static class StreamRecompression
{
    public static PdfResult<ObjectGraph> Apply(ObjectGraph graph)
    {
        var objects = ImmutableArray.CreateBuilder<PdfObject>(graph.Objects.Length);
        foreach (var value in graph.Objects)
        {
            if (value is not PdfStream stream)
            {
                objects.Add(value);
            }
            else if (Recompress(stream).TryGet(out var recompressed, out var failure))
            {
                objects.Add(recompressed);
            }
            else
            {
                return new(failure);
            }
        }

        return new(graph with { Objects = objects.DrainToImmutable() });
    }

    /// <summary>Bytes as a new stream, compressed where that makes them shorter.</summary>
    public static PdfStream Compress(PdfDictionary dictionary, ReadOnlyMemory<byte> data)
    {
        var encoded = ZlibEncoder.Encode(data);
        return encoded.Length < data.Length
            ? new PdfStream(dictionary.With("Filter", new PdfName("FlateDecode")), encoded)
            : new PdfStream(dictionary.Without("Filter"), data);
    }

    private static PdfResult<PdfStream> Recompress(PdfStream stream)
    {
        var dictionary = stream.Dictionary;
        var filter = dictionary.Find("Filter") is PdfArray { Items: [var only] }
            ? only
            : dictionary.Find("Filter");
        var outermost = filter is PdfArray { Items: [var first, ..] } ? first : filter;
        if (filter is null)
        {
            // Metadata must stay readable for programs that know no PDF.
            return new(
                dictionary.Find("Type") is PdfName { Value: "Metadata" }
                    ? stream
                    : Compress(dictionary, stream.Encoded)
            );
        }

        if (outermost is not PdfName { Value: "FlateDecode" })
        {
            return new(stream);
        }

        if (
            !ZlibDecoder
                .Decode(stream.Encoded, ReadingLimits.StreamLength)
                .TryGet(out var data, out var failure)
        )
        {
            return new(failure);
        }

        // With further filters or a predictor the bytes beneath stay encoded, and the entries that say so stay true.
        return new(
            filter is PdfName && dictionary.Find("DecodeParms") is null
                ? Compress(dictionary, data)
                : new PdfStream(dictionary.With("Filter", filter), ZlibEncoder.Encode(data))
        );
    }
}

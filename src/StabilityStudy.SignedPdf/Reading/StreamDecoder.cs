using StabilityStudy.SignedPdf.Compression;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Undoes the filters of a stream (ISO 32000-1:2008, 7.4).</summary>
internal static class StreamDecoder
{
    /// <summary>
    /// The decoded bytes. Known are no filter and /FlateDecode, also with the PNG predictors; filters and their
    /// parameters must be given directly, not by reference.
    /// </summary>
    /// <param name="stream">The stream.</param>
    /// <param name="longest">Most bytes that may come out.</param>
    public static PdfResult<ReadOnlyMemory<byte>> Decode(PdfStream stream, int longest)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var filter = Single(stream.Dictionary.Find("Filter"));
        var parameters = Single(stream.Dictionary.Find("DecodeParms"));
        return (filter, parameters) switch
        {
            (null, _) when stream.Encoded.Length > longest => Refused(
                "A stream is longer than the bound."
            ),
            (null, _) => new(stream.Encoded),
            (PdfName { Value: "FlateDecode" }, null) => ZlibDecoder.Decode(stream.Encoded, longest),
            (PdfName { Value: "FlateDecode" }, PdfDictionary given) => WithoutPredictor(
                ZlibDecoder.Decode(stream.Encoded, longest),
                given
            ),
            _ => Refused("A stream has filters other than FlateDecode."),
        };
    }

    private static PdfResult<ReadOnlyMemory<byte>> WithoutPredictor(
        PdfResult<ReadOnlyMemory<byte>> inflated,
        PdfDictionary parameters
    )
    {
        if (!inflated.TryGet(out var data, out _))
        {
            return inflated;
        }

        var predictor = Integer(parameters, "Predictor", 1);
        if (predictor == 1)
        {
            return inflated;
        }

        var colors = Integer(parameters, "Colors", 1);
        var bits = Integer(parameters, "BitsPerComponent", 8);
        var columns = Integer(parameters, "Columns", 1);
        if (
            predictor is not (>= 10 and <= 15)
            || colors is not (>= 1 and <= 32)
            || bits is not (1 or 2 or 4 or 8 or 16)
        )
        {
            return Refused("A stream has a predictor or predictor parameters that are not known.");
        }

        var rowLength = columns is >= 1 and <= int.MaxValue
            ? ((columns * colors * bits) + 7) / 8
            : 0;
        if (rowLength < 1 || rowLength > data.Length)
        {
            return data.IsEmpty
                ? inflated
                : Refused("A row of a predicted stream is longer than the stream.");
        }

        return
            PngPredictor.Undo(data.Span, (int)rowLength, (int)Math.Max(1, colors * bits / 8))
                is { } rows
            ? new(rows)
            : Refused("The rows of a predicted stream are incomplete or of unknown kind.");
    }

    private static PdfObject? Single(PdfObject? value) =>
        value switch
        {
            PdfNull or PdfArray { Items.Length: 0 } => null,
            PdfArray { Items: [PdfNull] } => null,
            PdfArray { Items: [var only] } => only,
            _ => value,
        };

    private static long Integer(PdfDictionary parameters, string name, long otherwise) =>
        parameters.Find(name) switch
        {
            null => otherwise,
            PdfInteger integer => integer.Value,
            _ => -1,
        };

    private static PdfResult<ReadOnlyMemory<byte>> Refused(string what) =>
        new(new PdfFailure(null, what));
}

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Decodes the streams that hold a file's structure, all together within one bound.</summary>
internal sealed class DecodingBudget
{
    private int _left = ReadingLimits.StructureLength;

    public PdfResult<ReadOnlyMemory<byte>> Decode(PdfStream stream)
    {
        var result = StreamDecoder.Decode(stream, _left);
        if (result.TryGet(out var data, out _))
        {
            _left -= data.Length;
        }

        return result;
    }
}

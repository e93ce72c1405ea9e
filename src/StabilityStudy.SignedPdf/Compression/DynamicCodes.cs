namespace StabilityStudy.SignedPdf.Compression;

/// <summary>The two codes made for one block, and the header that tells the reader about them (RFC 1951, section 3.2.7).</summary>
internal sealed class DynamicCodes
{
    private readonly int _literalCount;
    private readonly int _distanceCount;
    private readonly int _orderCount;
    private readonly List<CodeLengthRuns.Item> _runs;
    private readonly HuffmanCode _lengthCode;

    public DynamicCodes(ReadOnlySpan<int> literalFrequencies, ReadOnlySpan<int> distanceFrequencies)
    {
        Literals = new HuffmanCode(HuffmanLengths.Compute(literalFrequencies, 15));
        Distances = new HuffmanCode(HuffmanLengths.Compute(distanceFrequencies, 15));
        _literalCount = Math.Max(257, LastUsed(Literals.Lengths) + 1);
        _distanceCount = LastUsed(Distances.Lengths) + 1;
        _runs = CodeLengthRuns.Of([
            .. Literals.Lengths[.._literalCount],
            .. Distances.Lengths[.._distanceCount],
        ]);

        var frequencies = new int[19];
        foreach (var run in _runs)
        {
            frequencies[run.Symbol]++;
        }

        _lengthCode = new HuffmanCode(HuffmanLengths.Compute(frequencies, 7));
        _orderCount = 19;
        while (
            _orderCount > 4
            && _lengthCode.Lengths[DeflateAlphabet.CodeLengthOrder[_orderCount - 1]] == 0
        )
        {
            _orderCount--;
        }

        HeaderBits =
            14
            + (3 * _orderCount)
            + _lengthCode.Cost(frequencies)
            + _runs.Sum(static run => (long)run.ExtraBits);
    }

    public HuffmanCode Literals { get; }

    public HuffmanCode Distances { get; }

    public long HeaderBits { get; }

    public void WriteHeader(BitWriter writer)
    {
        writer.Write((uint)(_literalCount - 257), 5);
        writer.Write((uint)(_distanceCount - 1), 5);
        writer.Write((uint)(_orderCount - 4), 4);
        for (var i = 0; i < _orderCount; i++)
        {
            writer.Write(_lengthCode.Lengths[DeflateAlphabet.CodeLengthOrder[i]], 3);
        }

        foreach (var run in _runs)
        {
            _lengthCode.Write(writer, run.Symbol);
            writer.Write((uint)run.Extra, run.ExtraBits);
        }
    }

    private static int LastUsed(byte[] lengths) =>
        Array.FindLastIndex(lengths, static length => length > 0);
}

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>A prefix code made from its lengths (RFC 1951, section 3.2.2), the bits reversed so that they can be written lowest first.</summary>
internal sealed class HuffmanCode
{
    private const int LongestCode = 15;

    private readonly ushort[] _codes;

    public HuffmanCode(byte[] lengths)
    {
        Lengths = lengths;
        _codes = new ushort[lengths.Length];
        var counts = new int[LongestCode + 1];
        foreach (var length in lengths.Where(static length => length > 0))
        {
            counts[length]++;
        }

        var next = new int[LongestCode + 1];
        for (var length = 1; length <= LongestCode; length++)
        {
            next[length] = (next[length - 1] + counts[length - 1]) << 1;
        }

        for (var symbol = 0; symbol < lengths.Length; symbol++)
        {
            if (lengths[symbol] > 0)
            {
                _codes[symbol] = Reverse(next[lengths[symbol]]++, lengths[symbol]);
            }
        }
    }

    public byte[] Lengths { get; }

    public void Write(BitWriter writer, int symbol) =>
        writer.Write(_codes[symbol], Lengths[symbol]);

    /// <summary>Bits needed for symbols that occur so often.</summary>
    public long Cost(ReadOnlySpan<int> frequencies)
    {
        long bits = 0;
        for (var symbol = 0; symbol < frequencies.Length; symbol++)
        {
            bits += (long)frequencies[symbol] * Lengths[symbol];
        }

        return bits;
    }

    internal static ushort Reverse(int code, int length)
    {
        var reversed = 0;
        for (var bit = 0; bit < length; bit++)
        {
            reversed = (reversed << 1) | ((code >> bit) & 1);
        }

        return (ushort)reversed;
    }
}

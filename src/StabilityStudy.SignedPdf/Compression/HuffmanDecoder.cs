namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Reads the symbols of a prefix code given by its lengths (RFC 1951, section 3.2.2).</summary>
internal sealed class HuffmanDecoder
{
    private const int LongestCode = 15;

    // Codes up to this length are looked up at once; the few longer ones are compared length by length.
    private const int TableBits = 9;

    private readonly ushort[] _table = new ushort[1 << TableBits];
    private readonly int[] _counts = new int[LongestCode + 1];
    private readonly ushort[] _symbols;

    private HuffmanDecoder(int symbols) => _symbols = new ushort[symbols];

    /// <summary>A decoder; null when the lengths make no code. A code with room left is allowed only for a single symbol or none.</summary>
    public static HuffmanDecoder? TryCreate(ReadOnlySpan<byte> lengths)
    {
        var decoder = new HuffmanDecoder(lengths.Length);
        foreach (var length in lengths)
        {
            decoder._counts[length]++;
        }

        var used = lengths.Length - decoder._counts[0];
        decoder._counts[0] = 0;
        var room = 1;
        for (var length = 1; length <= LongestCode; length++)
        {
            room = (2 * room) - decoder._counts[length];
            if (room < 0)
            {
                return null;
            }
        }

        if (room > 0 && used > 1)
        {
            return null;
        }

        decoder.Fill(lengths);
        return decoder;
    }

    /// <summary>The next symbol; -1 when no code fits or the data end.</summary>
    public int Read(ref BitReader reader)
    {
        var bits = reader.Peek(LongestCode);
        var entry = _table[bits & ((1 << TableBits) - 1)];
        if (entry != 0)
        {
            return reader.Skip(entry & 0xF) ? entry >> 4 : -1;
        }

        var (code, first, index) = (0, 0, 0);
        for (var length = 1; length <= LongestCode; length++)
        {
            code |= (int)(bits >> (length - 1)) & 1;
            var count = _counts[length];
            if (code - first < count)
            {
                return reader.Skip(length) ? _symbols[index + code - first] : -1;
            }

            index += count;
            first = (first + count) << 1;
            code <<= 1;
        }

        return -1;
    }

    private void Fill(ReadOnlySpan<byte> lengths)
    {
        Span<int> next = stackalloc int[LongestCode + 2];
        Span<int> place = stackalloc int[LongestCode + 2];
        for (var length = 1; length <= LongestCode; length++)
        {
            next[length + 1] = (next[length] + _counts[length]) << 1;
            place[length + 1] = place[length] + _counts[length];
        }

        for (var symbol = 0; symbol < lengths.Length; symbol++)
        {
            var length = lengths[symbol];
            if (length == 0)
            {
                continue;
            }

            _symbols[place[length]++] = (ushort)symbol;
            var reversed = HuffmanCode.Reverse(next[length]++, length);
            for (
                int bits = reversed;
                length <= TableBits && bits < 1 << TableBits;
                bits += 1 << length
            )
            {
                _table[bits] = (ushort)((symbol << 4) | length);
            }
        }
    }
}

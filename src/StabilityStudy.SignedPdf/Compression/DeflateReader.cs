namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Reads the blocks of a deflate stream (RFC 1951, section 3.2).</summary>
internal static class DeflateReader
{
    private static HuffmanDecoder FixedLiterals { get; } = Required(FixedCodes.Literals.Lengths);

    private static HuffmanDecoder FixedDistances { get; } =
        Required([.. Enumerable.Repeat((byte)5, 32)]);

    /// <summary>Reads to the end of the last block; false when the data are damaged, end before, or exceed the bound of the output.</summary>
    public static bool TryRead(ref BitReader reader, InflatedBytes output)
    {
        int last;
        do
        {
            if (!reader.TryRead(1, out last) || !reader.TryRead(2, out var kind))
            {
                return false;
            }

            var read = kind switch
            {
                0 => TryReadStored(ref reader, output),
                1 => TryReadCodes(ref reader, output, FixedLiterals, FixedDistances),
                2 => TryReadDynamic(ref reader, output),
                _ => false,
            };
            if (!read)
            {
                return false;
            }
        } while (last == 0);

        return true;
    }

    private static bool TryReadStored(ref BitReader reader, InflatedBytes output)
    {
        reader.AlignToByte();
        if (reader.Rest is not [var low, var high, var notLow, var notHigh, .. var rest])
        {
            return false;
        }

        var length = low | (high << 8);
        if (
            (length ^ 0xFFFF) != (notLow | (notHigh << 8))
            || length > rest.Length
            || !output.TryAdd(rest[..length])
        )
        {
            return false;
        }

        reader.SkipBytes(4 + length);
        return true;
    }

    private static bool TryReadDynamic(ref BitReader reader, InflatedBytes output)
    {
        if (
            !reader.TryRead(5, out var literals)
            || !reader.TryRead(5, out var distances)
            || !reader.TryRead(4, out var orders)
        )
        {
            return false;
        }

        var orderLengths = new byte[19];
        for (var i = 0; i < orders + 4; i++)
        {
            if (!reader.TryRead(3, out var length))
            {
                return false;
            }

            orderLengths[DeflateAlphabet.CodeLengthOrder[i]] = (byte)length;
        }

        var lengths = new byte[literals + 257 + distances + 1];
        return HuffmanDecoder.TryCreate(orderLengths) is { } order
            && TryReadLengths(ref reader, order, lengths)
            && HuffmanDecoder.TryCreate(lengths.AsSpan(0, literals + 257)) is { } literalCode
            && HuffmanDecoder.TryCreate(lengths.AsSpan(literals + 257)) is { } distanceCode
            && TryReadCodes(ref reader, output, literalCode, distanceCode);
    }

    private static bool TryReadLengths(ref BitReader reader, HuffmanDecoder order, byte[] lengths)
    {
        for (var index = 0; index < lengths.Length; )
        {
            var symbol = order.Read(ref reader);
            if (symbol is >= 0 and < 16)
            {
                lengths[index++] = (byte)symbol;
                continue;
            }

            var (bits, shortest) = symbol switch
            {
                16 => (2, 3),
                17 => (3, 3),
                _ => (7, 11),
            };
            if (symbol < 0 || (symbol == 16 && index == 0) || !reader.TryRead(bits, out var more))
            {
                return false;
            }

            var count = shortest + more;
            if (count > lengths.Length - index)
            {
                return false;
            }

            lengths.AsSpan(index, count).Fill(symbol == 16 ? lengths[index - 1] : (byte)0);
            index += count;
        }

        return true;
    }

    private static bool TryReadCodes(
        ref BitReader reader,
        InflatedBytes output,
        HuffmanDecoder literals,
        HuffmanDecoder distances
    )
    {
        while (true)
        {
            var symbol = literals.Read(ref reader);
            switch (symbol)
            {
                case DeflateAlphabet.EndOfBlock:
                    return true;
                case >= 0 and < DeflateAlphabet.EndOfBlock:
                    if (!output.TryAdd((byte)symbol))
                    {
                        return false;
                    }

                    break;
                default:
                    if (
                        DeflateAlphabet.LengthOf(symbol) is not var (lengthBase, lengthBits)
                        || !reader.TryRead(lengthBits, out var lengthMore)
                        || DeflateAlphabet.DistanceOf(distances.Read(ref reader))
                            is not var (distanceBase, distanceBits)
                        || !reader.TryRead(distanceBits, out var distanceMore)
                        || !output.TryRepeat(distanceBase + distanceMore, lengthBase + lengthMore)
                    )
                    {
                        return false;
                    }

                    break;
            }
        }
    }

    private static HuffmanDecoder Required(byte[] lengths) =>
        HuffmanDecoder.TryCreate(lengths)
        ?? throw new InvalidOperationException("The fixed code is no code.");
}

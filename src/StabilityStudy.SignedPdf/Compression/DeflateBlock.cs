using System.Buffers.Binary;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Writes one block in the shortest of the three ways: stored, with the fixed codes, with codes of its own (RFC 1951, section 3.2.3).</summary>
internal static class DeflateBlock
{
    private const int LongestStored = 65535;

    /// <param name="writer">Where to write.</param>
    /// <param name="tokens">The literals and matches of the block.</param>
    /// <param name="data">The bytes that the tokens stand for.</param>
    /// <param name="last">Whether the stream ends with this block.</param>
    public static void Write(
        BitWriter writer,
        ReadOnlySpan<DeflateToken> tokens,
        ReadOnlySpan<byte> data,
        bool last
    )
    {
        var literals = new int[DeflateAlphabet.LiteralCount];
        var distances = new int[DeflateAlphabet.DistanceCount];
        var extraBits = Count(tokens, literals, distances);
        var dynamic = new DynamicCodes(literals, distances);
        var dynamicBits =
            dynamic.HeaderBits
            + dynamic.Literals.Cost(literals)
            + dynamic.Distances.Cost(distances);
        var fixedBits = FixedCodes.Literals.Cost(literals) + FixedCodes.Distances.Cost(distances);
        var storedBits = (8L * data.Length) + (((data.Length / LongestStored) + 1) * 40L);
        if (storedBits <= Math.Min(dynamicBits, fixedBits) + extraBits)
        {
            WriteStored(writer, data, last);
        }
        else if (fixedBits <= dynamicBits)
        {
            writer.Write(last ? 0b011u : 0b010u, 3);
            WriteTokens(writer, tokens, FixedCodes.Literals, FixedCodes.Distances);
        }
        else
        {
            writer.Write(last ? 0b101u : 0b100u, 3);
            dynamic.WriteHeader(writer);
            WriteTokens(writer, tokens, dynamic.Literals, dynamic.Distances);
        }
    }

    private static long Count(ReadOnlySpan<DeflateToken> tokens, int[] literals, int[] distances)
    {
        long extraBits = 0;
        literals[DeflateAlphabet.EndOfBlock] = 1;
        foreach (var token in tokens)
        {
            if (token.IsMatch)
            {
                var length = DeflateAlphabet.OfLength(token.Value);
                var distance = DeflateAlphabet.OfDistance(token.Distance);
                literals[length.Symbol]++;
                distances[distance.Symbol]++;
                extraBits += length.ExtraBits + distance.ExtraBits;
            }
            else
            {
                literals[token.Value]++;
            }
        }

        return extraBits;
    }

    private static void WriteTokens(
        BitWriter writer,
        ReadOnlySpan<DeflateToken> tokens,
        HuffmanCode literals,
        HuffmanCode distances
    )
    {
        foreach (var token in tokens)
        {
            if (token.IsMatch)
            {
                var length = DeflateAlphabet.OfLength(token.Value);
                var distance = DeflateAlphabet.OfDistance(token.Distance);
                literals.Write(writer, length.Symbol);
                writer.Write(length.Extra, length.ExtraBits);
                distances.Write(writer, distance.Symbol);
                writer.Write(distance.Extra, distance.ExtraBits);
            }
            else
            {
                literals.Write(writer, token.Value);
            }
        }

        literals.Write(writer, DeflateAlphabet.EndOfBlock);
    }

    private static void WriteStored(BitWriter writer, ReadOnlySpan<byte> data, bool last)
    {
        Span<byte> header = stackalloc byte[4];
        do
        {
            var part = data[..Math.Min(data.Length, LongestStored)];
            data = data[part.Length..];
            writer.Write(last && data.IsEmpty ? 1u : 0u, 3);
            writer.AlignToByte();
            BinaryPrimitives.WriteUInt16LittleEndian(header, (ushort)part.Length);
            BinaryPrimitives.WriteUInt16LittleEndian(header[2..], (ushort)(part.Length ^ 0xFFFF));
            writer.WriteBytes(header);
            writer.WriteBytes(part);
        } while (!data.IsEmpty);
    }
}

using System.Buffers;
using System.Buffers.Binary;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Compresses to a zlib stream (RFC 1950 and 1951). The encoder of the run-time library may give other bytes on
/// another processor or in another version; this one gives the same everywhere, which the same report needs.
/// </summary>
public static class ZlibEncoder
{
    private const int TokensPerBlock = 16384;

    // A match this long is taken at once; a shorter one only if the next byte does not begin a longer one.
    private const int LazyMatch = 16;

    // A match of three bytes so far back costs more than three literals.
    private const int FarthestShortMatch = 4096;

    /// <summary>The compressed bytes; any length, also none.</summary>
    public static byte[] Encode(ReadOnlySpan<byte> data)
    {
        var output = new ArrayBufferWriter<byte>(Math.Max(64, data.Length / 3));
        output.Write<byte>([0x78, 0x9C]);
        var writer = new BitWriter(output);
        WriteBlocks(writer, data);
        writer.AlignToByte();
        BinaryPrimitives.WriteUInt32BigEndian(output.GetSpan(4), Adler32.Compute(data));
        output.Advance(4);
        return output.WrittenSpan.ToArray();
    }

    private static void WriteBlocks(BitWriter writer, ReadOnlySpan<byte> data)
    {
        var finder = new MatchFinder(data.Length);
        var tokens = new DeflateToken[Math.Min(TokensPerBlock, data.Length)];
        var count = 0;
        var blockStart = 0;
        var position = 0;
        var found = (Length: 0, Distance: 0);
        while (position < data.Length)
        {
            if (count == TokensPerBlock)
            {
                DeflateBlock.Write(writer, tokens, data[blockStart..position], last: false);
                blockStart = position;
                count = 0;
            }

            found = found.Length > 0 ? found : Find(finder, data, position, 0);
            finder.Insert(data, position);
            var next = found.Length is > 0 and < LazyMatch
                ? Find(finder, data, position + 1, found.Length)
                : default;
            if (found.Length == 0 || next.Length > 0)
            {
                tokens[count++] = DeflateToken.Literal(data[position]);
                position++;
                found = next;
                continue;
            }

            tokens[count++] = DeflateToken.Match(found.Length, found.Distance);
            for (var inner = 1; inner < found.Length; inner++)
            {
                finder.Insert(data, position + inner);
            }

            position += found.Length;
            found = default;
        }

        DeflateBlock.Write(writer, tokens.AsSpan(0, count), data[blockStart..], last: true);
    }

    private static (int Length, int Distance) Find(
        MatchFinder finder,
        ReadOnlySpan<byte> data,
        int position,
        int atLeast
    )
    {
        var found = finder.Find(data, position, atLeast);
        return found is { Length: DeflateAlphabet.ShortestMatch, Distance: > FarthestShortMatch }
            ? default
            : found;
    }
}

using System.IO.Compression;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Undoes the zlib compression of a stream (RFC 1950), within a bound. What comes out is settled by the format, so the decoder of the
/// run-time library serves; a stream that was cut off, which it takes for one that ended, is refused here, so that no part of an
/// attached file is lost unseen.
/// </summary>
internal static class ZlibDecoder
{
    private const int HeaderLength = 2;

    /// <summary>
    /// The decompressed bytes, or why there are none. The checksum at the end may be missing, since some writers
    /// leave it out; one that is there must be right.
    /// </summary>
    /// <param name="encoded">Header and compressed bytes; bytes after the checksum are not looked at.</param>
    /// <param name="longest">Most bytes that may come out.</param>
    public static PdfResult<ReadOnlyMemory<byte>> Decode(ReadOnlyMemory<byte> encoded, int longest)
    {
        try
        {
            using var whole = new ZLibStream(
                new CompressedBytes(encoded),
                CompressionMode.Decompress
            );
            return Read(whole, longest, encoded.Length);
        }
        catch (EndOfStreamException) when (IsWithoutDictionary(encoded.Span))
        {
            return WithoutChecksum(encoded[HeaderLength..], longest);
        }
        catch (IOException)
        {
            return Refused("The compressed bytes are not those of a zlib stream.");
        }
        catch (InvalidDataException)
        {
            return Refused("The compressed bytes are damaged, or their checksum is wrong.");
        }
    }

    /// <summary>The bytes of a stream that ended too early: complete if only the checksum is missing.</summary>
    private static PdfResult<ReadOnlyMemory<byte>> WithoutChecksum(
        ReadOnlyMemory<byte> blocks,
        int longest
    )
    {
        try
        {
            using var inflated = new DeflateStream(
                new CompressedBytes(blocks),
                CompressionMode.Decompress
            );
            return Read(inflated, longest, blocks.Length);
        }
        catch (EndOfStreamException)
        {
            return Refused("The compressed bytes are cut off.");
        }
    }

    /// <summary>Whether the header is there and announces no preset dictionary, which would stand before the first block.</summary>
    private static bool IsWithoutDictionary(ReadOnlySpan<byte> encoded) =>
        encoded.Length >= HeaderLength && (encoded[1] & 0x20) == 0;

    private static PdfResult<ReadOnlyMemory<byte>> Read(Stream inflated, int longest, int encoded)
    {
        var room = longest + 1L;
        var bytes = new byte[Math.Min(room, Math.Max(1024, 4L * encoded))];
        for (var length = 0; length <= longest; )
        {
            if (length == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(room, 2L * length));
            }

            var read = inflated.Read(bytes.AsSpan(length));
            if (read == 0)
            {
                return new(bytes.AsMemory(0, length));
            }

            length += read;
        }

        return Refused("The compressed bytes grow beyond the bound.");
    }

    private static PdfResult<ReadOnlyMemory<byte>> Refused(string what) =>
        new(new PdfFailure(null, what));
}

using System.IO.Compression;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Undoes the zlib compression of a stream (RFC 1950), within a bound.</summary>
public static class ZlibDecoder
{
    /// <summary>
    /// The decompressed bytes, or why there are none. The checksum at the end is neither needed nor looked at, because
    /// some writers leave it out.
    /// </summary>
    /// <param name="encoded">Header and compressed bytes.</param>
    /// <param name="longest">Most bytes that may come out.</param>
    public static PdfResult<ReadOnlyMemory<byte>> Decode(ReadOnlyMemory<byte> encoded, int longest)
    {
        var header = encoded.Span;
        if (
            header.Length < 2
            || (header[0] & 0x0F) != 8
            || ((header[0] * 256) + header[1]) % 31 != 0
            || (header[1] & 0x20) != 0
        )
        {
            return Refused("The compressed bytes do not begin as zlib streams do.");
        }

        try
        {
            using var input = new MemoryStream(encoded[2..].ToArray(), writable: false);
            using var inflate = new DeflateStream(input, CompressionMode.Decompress);
            var decoded = new MemoryStream(
                Math.Min(longest, encoded.Length) * 3L is var guess && guess < longest
                    ? (int)guess
                    : longest
            );
            var buffer = new byte[16384];
            while (inflate.Read(buffer) is > 0 and var read)
            {
                if (decoded.Length + read > longest)
                {
                    return Refused("The compressed bytes grow beyond the bound.");
                }

                decoded.Write(buffer, 0, read);
            }

            return new(decoded.GetBuffer().AsMemory(0, (int)decoded.Length));
        }
        catch (InvalidDataException)
        {
            // The only way in which the library says that its input is no deflate stream.
            return Refused("The compressed bytes are damaged.");
        }
    }

    private static PdfResult<ReadOnlyMemory<byte>> Refused(string what) =>
        new(new PdfFailure(null, what));
}

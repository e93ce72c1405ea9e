using System.Buffers.Binary;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Undoes the zlib compression of a stream (RFC 1950), within a bound. The decoder of the run-time library takes a stream that was
/// cut off for one that ended, so that part of an attached file could be lost unseen; this one does not.
/// </summary>
public static class ZlibDecoder
{
    /// <summary>
    /// The decompressed bytes, or why there are none. The checksum at the end may be missing, since some writers
    /// leave it out; one that is there must be right.
    /// </summary>
    /// <param name="encoded">Header and compressed bytes; bytes after the checksum are not looked at.</param>
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

        var output = new InflatedBytes(
            longest,
            (int)Math.Min(4L * encoded.Length, int.MaxValue / 2)
        );
        var reader = new BitReader(header[2..]);
        if (!DeflateReader.TryRead(ref reader, output))
        {
            return Refused(
                "The compressed bytes are damaged or cut off, or grow beyond the bound."
            );
        }

        reader.AlignToByte();
        return
            reader.Rest.Length < 4
            || BinaryPrimitives.ReadUInt32BigEndian(reader.Rest)
                == Adler32.Compute(output.Written.Span)
            ? new(output.Written)
            : Refused("The checksum of the compressed bytes is wrong.");
    }

    private static PdfResult<ReadOnlyMemory<byte>> Refused(string what) =>
        new(new PdfFailure(null, what));
}

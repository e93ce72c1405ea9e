using System.Runtime.InteropServices;
using ICSharpCode.SharpZipLib.Zip.Compression;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Compresses to a zlib stream (RFC 1950 and 1951). The encoder of the run-time library is native code that may give other bytes
/// on another processor or in another version; that of SharpZipLib is managed code over integers and gives the same everywhere,
/// which the same report needs.
/// </summary>
internal static class ZlibEncoder
{
    /// <summary>The usual middle between speed and size: the best level, 9, takes twice the time for 1 % less.</summary>
    private const int Level = 6;

    /// <summary>The compressed bytes; any length, also none.</summary>
    public static byte[] Encode(ReadOnlyMemory<byte> data)
    {
        var deflater = new Deflater(Level);
        var input = MemoryMarshal.TryGetArray(data, out var array) ? array : new(data.ToArray());
        deflater.SetInput(input.Array, input.Offset, input.Count);
        deflater.Finish();
        using var output = new MemoryStream();
        var piece = new byte[16 * 1024];
        while (!deflater.IsFinished)
        {
            output.Write(piece, 0, deflater.Deflate(piece));
        }

        return output.ToArray();
    }
}

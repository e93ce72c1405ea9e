using System.Runtime.InteropServices;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>
/// Bytes for a decoder of the run-time library. That one asks for more only while its stream has not ended, and takes no answer for
/// the end; here a question beyond the last byte is an <see cref="EndOfStreamException"/>.
/// </summary>
internal sealed class CompressedBytes(ArraySegment<byte> bytes)
    : MemoryStream(bytes.Array ?? [], bytes.Offset, bytes.Count, writable: false)
{
    public CompressedBytes(ReadOnlyMemory<byte> bytes)
        : this(MemoryMarshal.TryGetArray(bytes, out var array) ? array : new(bytes.ToArray())) { }

    public override int Read(byte[] buffer, int offset, int count) =>
        base.Read(buffer, offset, count) is > 0 and var read
            ? read
            : throw new EndOfStreamException();
}

using System.Buffers;
using System.Buffers.Binary;

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Packs bits into bytes, lowest bit first (RFC 1951, section 3.1.1).</summary>
internal sealed class BitWriter(ArrayBufferWriter<byte> output)
{
    private ulong _bits;
    private int _count;

    /// <summary>Writes the lowest <paramref name="count"/> (at most 32) bits; the others must be zero.</summary>
    public void Write(uint bits, int count)
    {
        _bits |= (ulong)bits << _count;
        _count += count;
        if (_count >= 32)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(
                output.GetSpan(4),
                (uint)(_bits & uint.MaxValue)
            );
            output.Advance(4);
            _bits >>= 32;
            _count -= 32;
        }
    }

    /// <summary>Fills the last byte with zeros.</summary>
    public void AlignToByte()
    {
        for (; _count > 0; _count -= 8)
        {
            output.Write([(byte)(_bits & 0xFF)]);
            _bits >>= 8;
        }

        _count = 0;
    }

    /// <summary>Writes whole bytes; the writer must be aligned.</summary>
    public void WriteBytes(ReadOnlySpan<byte> bytes) => output.Write(bytes);
}

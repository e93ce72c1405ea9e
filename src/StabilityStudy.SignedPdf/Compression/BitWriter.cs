using System.Buffers;

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
        while (_count >= 8)
        {
            WriteByte((byte)(_bits & 0xFF));
            _bits >>= 8;
            _count -= 8;
        }
    }

    /// <summary>Fills the last byte with zeros.</summary>
    public void AlignToByte()
    {
        if (_count > 0)
        {
            WriteByte((byte)(_bits & 0xFF));
        }

        _bits = 0;
        _count = 0;
    }

    /// <summary>Writes whole bytes; the writer must be aligned.</summary>
    public void WriteBytes(ReadOnlySpan<byte> bytes) => output.Write(bytes);

    private void WriteByte(byte value)
    {
        output.GetSpan(1)[0] = value;
        output.Advance(1);
    }
}

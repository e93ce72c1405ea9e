namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Takes bits out of bytes, lowest bit first (RFC 1951, section 3.1.1).</summary>
internal ref struct BitReader(ReadOnlySpan<byte> data)
{
    private readonly ReadOnlySpan<byte> _data = data;
    private int _next;
    private ulong _bits;
    private int _count;

    /// <summary>The next bits without taking them, zeros beyond the end; at most 32.</summary>
    public uint Peek(int count)
    {
        while (_count < count && _next < _data.Length)
        {
            _bits |= (ulong)_data[_next++] << _count;
            _count += 8;
        }

        return (uint)(_bits & ((1ul << count) - 1));
    }

    /// <summary>Drops bits that were peeked; false when the data have ended before.</summary>
    public bool Skip(int count)
    {
        if (_count < count)
        {
            return false;
        }

        _bits >>= count;
        _count -= count;
        return true;
    }

    /// <summary>Takes the next bits, at most 32; false when the data end before.</summary>
    public bool TryRead(int count, out int value)
    {
        value = (int)Peek(count);
        return Skip(count);
    }

    /// <summary>Drops the rest of the current byte; whole bytes that follow are given back to <see cref="Rest"/>.</summary>
    public void AlignToByte()
    {
        _next -= _count / 8;
        _bits = 0;
        _count = 0;
    }

    /// <summary>The bytes not yet taken; the reader must be aligned.</summary>
    public readonly ReadOnlySpan<byte> Rest => _data[_next..];

    /// <summary>Drops whole bytes of <see cref="Rest"/>.</summary>
    public void SkipBytes(int count) => _next += count;
}

namespace StabilityStudy.SignedPdf.Compression;

/// <summary>Bytes coming out of a decoder, up to a bound.</summary>
internal sealed class InflatedBytes(int longest, int expected)
{
    private byte[] _bytes = new byte[Math.Min(longest, expected)];

    public int Length { get; private set; }

    public ReadOnlyMemory<byte> Written => _bytes.AsMemory(0, Length);

    /// <summary>Adds bytes; false when they exceed the bound.</summary>
    public bool TryAdd(ReadOnlySpan<byte> bytes)
    {
        if (!TryGrow(bytes.Length))
        {
            return false;
        }

        bytes.CopyTo(_bytes.AsSpan(Length));
        Length += bytes.Length;
        return true;
    }

    /// <summary>Adds one byte; false when it exceeds the bound.</summary>
    public bool TryAdd(byte value)
    {
        if (Length == _bytes.Length && !TryGrow(1))
        {
            return false;
        }

        _bytes[Length++] = value;
        return true;
    }

    /// <summary>Repeats bytes written before, which may overlap what is being added; false beyond the start or the bound.</summary>
    public bool TryRepeat(int distance, int length)
    {
        if (distance > Length || !TryGrow(length))
        {
            return false;
        }

        // What overlaps is copied in pieces; each piece makes the next one twice as long.
        for (var start = Length - distance; length > 0; )
        {
            var piece = Math.Min(length, Length - start);
            _bytes.AsSpan(start, piece).CopyTo(_bytes.AsSpan(Length));
            Length += piece;
            length -= piece;
        }

        return true;
    }

    private bool TryGrow(int count)
    {
        if (count > longest - Length)
        {
            return false;
        }

        if (count > _bytes.Length - Length)
        {
            var doubled = Math.Min(longest, 2L * Math.Max(_bytes.Length, 1024));
            Array.Resize(ref _bytes, (int)Math.Max(doubled, Length + count));
        }

        return true;
    }
}

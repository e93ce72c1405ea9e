namespace StabilityStudy.Files.Tables;

/// <summary>
/// The check sum of archives (ISO 3309, reflected polynomial EDB88320). The run-time library does not compare it, and a damaged
/// workbook must not be read into other numbers.
/// </summary>
internal struct Crc32()
{
    private const uint Polynomial = 0xEDB88320;
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(Entry)];
    private uint _sum = uint.MaxValue;

    /// <summary>The sum of the bytes so far.</summary>
    public readonly uint Sum => ~_sum;

    /// <summary>Adds bytes.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        var sum = _sum;
        foreach (var b in bytes)
        {
            sum = Table[(sum ^ b) & 0xFF] ^ (sum >> 8);
        }

        _sum = sum;
    }

    private static uint Entry(int index)
    {
        var entry = (uint)index;
        for (var bit = 0; bit < 8; bit++)
        {
            entry = (entry & 1) == 1 ? (entry >> 1) ^ Polynomial : entry >> 1;
        }

        return entry;
    }
}

using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>
/// A large file in the usual form as two files with its header line, so that they can be read side by side. A double
/// quote may hold a line break, so a file with one is never parted.
/// </summary>
/// <param name="First">The header line and the rows of the first half.</param>
/// <param name="Second">The header line and the rows of the second half.</param>
/// <param name="LinesOfFirst">Rows of the first half.</param>
internal sealed record TableHalves(
    ReadOnlyMemory<byte> First,
    ReadOnlyMemory<byte> Second,
    int LinesOfFirst
)
{
    private const int LargeBytes = 4_000_000;

    /// <summary>The halves; null for a file that is not large, or cannot be parted at a line feed.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="columns">How it is laid out.</param>
    public static TableHalves? Of(ReadOnlyMemory<byte> utf8, CsvColumns columns)
    {
        var text = utf8.Span;
        if (text.Length < LargeBytes || columns.Layout is not null || text.Contains((byte)'"'))
        {
            return null;
        }

        var header = text.IndexOf((byte)'\n') + 1;
        var middle = text.Length / 2;
        var end = text[middle..].IndexOf((byte)'\n') + 1;
        if (header == 0 || header > middle || end == 0)
        {
            return null;
        }

        var second = new byte[header + text.Length - middle - end];
        text[..header].CopyTo(second);
        text[(middle + end)..].CopyTo(second.AsSpan(header));
        var first = utf8[..(middle + end)];
        return new(first, second, first.Span.Count((byte)'\n') - 1);
    }
}

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

    /// <summary>Reads a file, a large one in halves side by side as long as there is nothing to ask about it.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">How it is laid out.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="linesBefore">What is added to the number of a line, for files after the first of their kind.</param>
    /// <param name="read">Reads a file with its header line, each row whatever was read before it.</param>
    public static RowTable<T> Read<T>(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        QueryList queries,
        int linesBefore,
        Func<ReadOnlyMemory<byte>, QueryList, int, RowTable<T>> read
    )
    {
        if (
            Of(utf8, columns) is var (first, second, linesOfFirst)
            && !TableSize.ReportExcess(utf8.Span, fileName, new QueryList())
        )
        {
            var (ofFirst, ofSecond) = (
                new QueryList { IsCollecting = queries.IsCollecting },
                new QueryList { IsCollecting = queries.IsCollecting }
            );
            var tables = new RowTable<T>[2];
            Parallel.Invoke(
                () => tables[0] = read(first, ofFirst, linesBefore),
                () => tables[1] = read(second, ofSecond, linesBefore + linesOfFirst)
            );
            if (ofFirst.ToImmutable().IsEmpty && ofSecond.ToImmutable().IsEmpty)
            {
                return tables[0].With(tables[1]);
            }
        }

        return read(utf8, queries, linesBefore);
    }

    private static TableHalves? Of(ReadOnlyMemory<byte> utf8, CsvColumns columns)
    {
        var text = utf8.Span;
        if (
            text.Length < LargeBytes
            || columns.Layout is not null
            || text.Contains((byte)'"')
            // Lines with ends of several kinds are counted by the reader alone.
            || (text.Contains((byte)'\r') && text.Count((byte)'\r') != text.Count((byte)'\n'))
        )
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

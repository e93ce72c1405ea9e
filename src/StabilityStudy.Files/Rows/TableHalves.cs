using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>
/// Reads a large file in the usual form in two halves side by side. A double quote may hold a line break, so a file with one is
/// never parted.
/// </summary>
internal static class TableHalves
{
    private const int LargeBytes = 4_000_000;

    /// <summary>Reads a file, a large one in halves side by side as long as there is nothing to ask about it.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">How it is laid out.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="linesBefore">What is added to the number of a line, for files after the first of their kind.</param>
    /// <param name="read">Reads a file or a part of it, each row whatever was read before it.</param>
    public static RowTable<T> Read<T>(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        QueryList queries,
        int linesBefore,
        Func<TablePart, QueryList, RowTable<T>> read
    )
    {
        if (
            Of(utf8, columns, linesBefore) is var (first, second)
            && !TableSize.ReportExcess(utf8.Span, fileName, new QueryList())
        )
        {
            var (ofFirst, ofSecond) = (
                new QueryList { IsCollecting = queries.IsCollecting },
                new QueryList { IsCollecting = queries.IsCollecting }
            );
            var tables = new RowTable<T>[2];
            Parallel.Invoke(
                () => tables[0] = read(first, ofFirst),
                () => tables[1] = read(second, ofSecond)
            );
            if (ofFirst.ToImmutable().IsEmpty && ofSecond.ToImmutable().IsEmpty)
            {
                return tables[0].With(tables[1]);
            }
        }

        return read(TablePart.Of(utf8, linesBefore), queries);
    }

    private static (TablePart First, TablePart Second)? Of(
        ReadOnlyMemory<byte> utf8,
        CsvColumns columns,
        int linesBefore
    )
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
        // A mark is one at the beginning of a file alone.
        if (
            header == 0
            || header > middle
            || end == 0
            || Utf8Text.WithoutMark(utf8[(middle + end)..]).Length < text.Length - middle - end
        )
        {
            return null;
        }

        var first = TablePart.Of(utf8[..(middle + end)], linesBefore);
        return (first, new(utf8[(middle + end)..], utf8[..header], linesBefore + first.Rows));
    }
}

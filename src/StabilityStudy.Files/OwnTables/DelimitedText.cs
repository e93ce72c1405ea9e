using CsvHelper;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Reads text with signs between its fields as lines of a table.</summary>
internal static class DelimitedText
{
    /// <summary>The lines from one on.</summary>
    /// <param name="utf8">The text, without a byte order mark.</param>
    /// <param name="layout">How it is written.</param>
    /// <param name="fromLine">The first line that is read; those before are of any form.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="queries">Takes what does not fit.</param>
    public static IEnumerable<TableLine> Lines(
        ReadOnlyMemory<byte> utf8,
        FileLayout layout,
        int fromLine,
        string fileName,
        QueryList queries
    )
    {
        var rest = Skip(utf8, fromLine - 1);
        if (rest.IsEmpty)
        {
            yield break;
        }

        using var reader = CsvReader.Create(
            rest,
            CsvFile.Options(layout.Delimiter, fileName, fromLine - 1, queries)
        );
        while (reader.Read())
        {
            var number = (int)reader.LineNumber + fromLine - 1;
            if (reader.RawRecord.Length > StudyLimits.RowBytes)
            {
                CsvFile.ReportTooLong(fileName, number, reader.RawRecord.Length, queries);
                continue;
            }

            var cells = new TableCell[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = new(reader.GetString(i));
            }

            yield return new(number, cells);
        }
    }

    private static ReadOnlyMemory<byte> Skip(ReadOnlyMemory<byte> text, int lines)
    {
        for (; lines > 0 && !text.IsEmpty; lines--)
        {
            var end = text.Span.IndexOfAny((byte)'\n', (byte)'\r');
            if (end < 0)
            {
                return default;
            }

            var isPair = text.Span[end] == '\r' && text.Span[(end + 1)..] is [(byte)'\n', ..];
            text = text[(isPair ? end + 2 : end + 1)..];
        }

        return text;
    }
}

using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Writes comma-separated text of which every byte follows from the rows (RFC 4180 with line feeds).</summary>
internal static class CanonicalCsv
{
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",\"\r\n");

    public static ReadOnlyMemory<byte> Write<T>(
        CsvColumns columns,
        ImmutableArray<T> rows,
        Func<T, string[]> fields
    )
    {
        var bytes = new ArrayBufferWriter<byte>();
        WriteLine(bytes, columns.All.AsSpan());
        foreach (var row in rows)
        {
            WriteLine(bytes, fields(row));
        }

        return bytes.WrittenMemory;
    }

    private static void WriteLine(ArrayBufferWriter<byte> bytes, ReadOnlySpan<string> fields)
    {
        for (var i = 0; i < fields.Length; i++)
        {
            if (i > 0)
            {
                bytes.Write(","u8);
            }

            var field = fields[i];
            var text = field.AsSpan().ContainsAny(NeedsQuotes)
                ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
                : field;
            Encoding.UTF8.GetBytes(text, bytes);
        }

        bytes.Write("\n"u8);
    }
}

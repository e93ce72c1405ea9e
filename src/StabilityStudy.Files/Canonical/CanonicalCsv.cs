using System.Buffers;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Writes comma-separated text of which every byte follows from the rows.</summary>
internal static class CanonicalCsv
{
    private const int UsualLine = 160;

    public static ReadOnlyMemory<byte> Write<T>(
        ColumnTable<T> table,
        ImmutableArray<T> rows,
        Func<T, int> sourceRow
    )
    {
        var bytes = new ArrayBufferWriter<byte>(UsualLine * (rows.Length + 1));
        var line = new CanonicalLine(bytes);
        foreach (var name in table.Columns.WithSourceRow().Names)
        {
            line.Text(name);
        }

        line.End();
        foreach (var row in rows)
        {
            table.Write(row, line);
            line.Number(sourceRow(row)).End();
        }

        return bytes.WrittenMemory;
    }
}

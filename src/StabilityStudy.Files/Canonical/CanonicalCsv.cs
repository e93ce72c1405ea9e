using System.Buffers;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Comma-separated text of which every byte follows from the rows.</summary>
/// <param name="Bytes">The text.</param>
/// <param name="DataSha256">SHA-256 of the same without the column of source rows, lower-case hexadecimal: the same however a facility sorts its files.</param>
internal sealed record CanonicalCsv(ReadOnlyMemory<byte> Bytes, string DataSha256)
{
    private const int UsualLine = 160;

    /// <summary>Writes rows.</summary>
    /// <param name="table">The columns.</param>
    /// <param name="rows">The rows in their order.</param>
    /// <param name="sourceRow">The line that a row has in the facility's file.</param>
    public static CanonicalCsv Write<T>(
        ColumnTable<T> table,
        ImmutableArray<T> rows,
        Func<T, int> sourceRow
    )
    {
        var bytes = new ArrayBufferWriter<byte>(UsualLine * (rows.Length + 1));
        using var data = new DigestWriter();
        var (columns, write) = table.Of(rows);
        var line = new CanonicalLine();
        foreach (var name in columns.Names)
        {
            line.Text(name);
        }

        data.WriteLine(line.Bytes);
        End(line.Text(CsvColumns.SourceRow.Name), bytes);
        foreach (var row in rows)
        {
            write(row, line);
            data.WriteLine(line.Bytes);
            End(line.Whole(sourceRow(row)), bytes);
        }

        return new(bytes.WrittenMemory, data.Sha256());
    }

    private static void End(CanonicalLine line, ArrayBufferWriter<byte> bytes)
    {
        bytes.Write(line.Bytes);
        bytes.Write("\n"u8);
        line.Clear();
    }
}

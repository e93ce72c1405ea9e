using System.Buffers;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Writes comma-separated text of which every byte follows from the rows.</summary>
internal static class CanonicalCsv
{
    private const int UsualLine = 160;

    /// <param name="table">The columns.</param>
    /// <param name="rows">The rows in their order.</param>
    /// <param name="sourceRow">The line that a row has in the facility's file.</param>
    public static ReadOnlyMemory<byte> Write<T>(
        ColumnTable<T> table,
        ImmutableArray<T> rows,
        Func<T, int> sourceRow
    )
    {
        var bytes = new ArrayBufferWriter<byte>(UsualLine * (rows.Length + 1));
        Write(table, rows, sourceRow, bytes);
        return bytes.WrittenMemory;
    }

    /// <summary>SHA-256 of the same without the column of source rows, lower-case hexadecimal.</summary>
    /// <param name="table">The columns.</param>
    /// <param name="rows">The rows in their order.</param>
    public static string Sha256<T>(ColumnTable<T> table, ImmutableArray<T> rows)
    {
        using var bytes = new DigestWriter();
        Write(table, rows, null, bytes);
        return bytes.Sha256();
    }

    private static void Write<T>(
        ColumnTable<T> table,
        ImmutableArray<T> rows,
        Func<T, int>? sourceRow,
        IBufferWriter<byte> bytes
    )
    {
        var line = new CanonicalLine(bytes);
        var (columns, write) = table.Of(rows);
        foreach (var name in (sourceRow is null ? columns : columns.WithSourceRow()).Names)
        {
            line.Text(name);
        }

        line.End();
        foreach (var row in rows)
        {
            write(row, line);
            if (sourceRow is not null)
            {
                line.Number(sourceRow(row));
            }

            line.End();
        }
    }
}

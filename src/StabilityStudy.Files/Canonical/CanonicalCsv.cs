using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>Comma-separated text of which every byte follows from the rows.</summary>
/// <param name="Bytes">The text.</param>
/// <param name="Sha256">Its SHA-256, lower-case hexadecimal.</param>
/// <param name="DataSha256">SHA-256 of the same without the column of source rows: the same however a facility sorts its files.</param>
internal sealed record CanonicalCsv(ReadOnlyMemory<byte> Bytes, string Sha256, string DataSha256)
{
    /// <summary>Rows from which portions of a table are written side by side.</summary>
    private const int ManyRows = 10_000;

    /// <summary>Rows of such a portion.</summary>
    private const int PortionRows = 4096;

    // The lines of the first portion may be shorter than those of others, or far longer.
    private const double RoomForLongerLines = 1.05;
    private const long LongUsualLine = 160;

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
        var (columns, write) = table.Of(rows);
        var (header, first) = (new CanonicalLines(), new CanonicalLines());
        header.AddHeader(columns.Names);
        var size = rows.Length < ManyRows ? ManyRows : PortionRows;
        var portions = (rows.Length + size - 1) / size;
        WritePortion(first, 0);
        using var text = new CanonicalText(
            header,
            (int)
                Math.Min(
                    RoomForLongerLines * portions * first.Text.Length,
                    first.Text.Length + (LongUsualLine * rows.Length)
                )
        );
        text.Add(first, 0);
        WriteSideBySide(1, portions, WritePortion, text);
        return text.ToCsv();

        void WritePortion(CanonicalLines lines, int portion) =>
            lines.Write(
                rows.AsSpan()[(size * portion)..Math.Min(size * (portion + 1), rows.Length)],
                write,
                sourceRow
            );
    }

    /// <summary>The text as a file.</summary>
    public CanonicalFile Named(string name) => new(name, Bytes, Sha256);

    private static void WriteSideBySide(
        int from,
        int to,
        Action<CanonicalLines, int> write,
        CanonicalText text
    )
    {
        var next = from;
        Parallel.For(
            0,
            Math.Min(Environment.ProcessorCount, to - from),
            _ =>
            {
                var lines = new CanonicalLines();
                while (Interlocked.Increment(ref next) - 1 is var portion && portion < to)
                {
                    try
                    {
                        write(lines, portion);
                    }
                    finally
                    {
                        // Nobody waits for a portion that cannot be written.
                        text.Add(lines, portion);
                    }
                }
            }
        );
    }
}

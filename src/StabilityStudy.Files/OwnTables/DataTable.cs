using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Reads a file of data, row by row: in the usual form, or a facility's own table as study.toml describes it.</summary>
internal static class DataTable
{
    /// <summary>Reads the rows of a file, in its order.</summary>
    /// <param name="bytes">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">What the file must and may have.</param>
    /// <param name="known">What the rows may refer to.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="read">Called for each sound row; the row is valid only during the call.</param>
    /// <param name="linesBefore">What is added to the number of a line, for files after the first of their kind.</param>
    /// <param name="header">The header line, where <paramref name="bytes"/> has rows alone; else empty.</param>
    /// <returns>How much of the file could be read.</returns>
    public static CsvReach Read(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        Action<CsvRow> read,
        int linesBefore,
        ReadOnlyMemory<byte> header = default
    )
    {
        var faults = new RowFaults(fileName, queries);
        var row = new CsvRow(
            columns.Layout?.ZoneRules is { } zone
                ? known with
                {
                    Times = new LocalTimes(zone, true),
                }
                : known,
            faults,
            linesBefore
        );
        var reach = columns.Layout is { } layout
            ? LaidOutTable.Read(bytes, fileName, columns, layout, row, queries, read)
            : CsvFile.Read(bytes, fileName, columns, row, queries, read, header);
        faults.Conclude();
        return reach;
    }
}

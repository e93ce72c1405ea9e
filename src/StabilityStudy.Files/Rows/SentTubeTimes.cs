using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.OwnTables;

namespace StabilityStudy.Files.Rows;

/// <summary>The times of collection and receipt that the messages of results state of each tube.</summary>
internal sealed class SentTubeTimes
{
    private static readonly Column<DateTimeOffset?> Collected = TubeColumns.CollectedAt.In(
        ColumnForms.OptionalTime
    ) with
    {
        Need = Need.Optional,
    };

    private readonly Dictionary<(TubeKey Tube, string Column), DateTimeOffset> _times = [];

    /// <summary>The columns of tubes without a need for the time of collection.</summary>
    public static CsvColumns Without(CsvColumns tubes) =>
        new(
            tubes.Section,
            [
                .. tubes.All.Select(column =>
                    column == TubeColumns.CollectedAt
                        ? TubeColumns.CollectedAt with
                        {
                            Need = Need.Optional,
                        }
                        : column
                ),
            ]
        )
        {
            Layout = tubes.Layout,
        };

    /// <summary>Reads the times of a file of messages. What is wrong with other fields is told when results are read.</summary>
    public void Add(
        ReadOnlyMemory<byte> bytes,
        string fileName,
        FileLayout layout,
        KnownCodes known,
        QueryList queries,
        int linesBefore
    )
    {
        var columns = new CsvColumns(
            ResultColumns.Table.Columns.Section,
            [TubeColumns.Specimen, TubeColumns.Tube, Collected, TubeColumns.ReceivedAt]
        )
        {
            Layout = layout,
        };
        var own = new QueryList();
        var ofTimes = new RowFaults(fileName, queries);
        DataTable.Read(bytes, fileName, columns, known, own, ReadRow, linesBefore);
        foreach (var query in own.ToImmutable())
        {
            if (
                query.Source.Column == Collected.Name
                || query.Source.Column == TubeColumns.ReceivedAt.Name
            )
            {
                queries.Add(query.Kind, query.Source, query.Observed, query.Text, query.Advice);
            }
        }

        ofTimes.Conclude();

        void ReadRow(CsvRow row)
        {
            var tube = new TubeKey(row.Read(TubeColumns.Specimen), row.Read(TubeColumns.Tube));
            foreach (
                var column in (ReadOnlySpan<Column<DateTimeOffset?>>)
                    [Collected, TubeColumns.ReceivedAt]
            )
            {
                if (
                    row.Read(column) is not { } time
                    || !row.IsSound
                    || _times.TryAdd((tube, column.Name), time)
                    || IsSame(_times[(tube, column.Name)], time)
                )
                {
                    continue;
                }

                ofTimes.Add(
                    MessageQueries.SentTimesDiffer,
                    row.Line - linesBefore,
                    column.Name,
                    StrictTime.Write(time),
                    $"Messages state different times of the tube \"{tube.Tube}\" of the specimen \"{tube.Specimen}\": {StrictTime.Write(_times[(tube, column.Name)])} and {StrictTime.Write(time)}.",
                    null
                );
            }
        }
    }

    /// <summary>The time of a row, or where it has none that of the messages; a query where the two differ.</summary>
    public DateTimeOffset? Read(CsvRow row, TubeKey tube, Column<DateTimeOffset?> column)
    {
        if (!_times.TryGetValue((tube, column.Name), out var sent))
        {
            return row.Read(column);
        }

        if (row.Read(column, isRequired: false) is not { } own)
        {
            return sent;
        }

        if (!IsSame(own, sent))
        {
            row.Add(
                MessageQueries.SentTimesDiffer,
                column,
                StrictTime.Write(own),
                $"The row has {StrictTime.Write(own)}, and the messages have {StrictTime.Write(sent)}."
            );
        }

        return own;
    }

    // One of the two may have no seconds.
    private static bool IsSame(DateTimeOffset first, DateTimeOffset second) =>
        Minute(first) == Minute(second);

    private static long Minute(DateTimeOffset time) => time.UtcTicks / TimeSpan.TicksPerMinute;
}

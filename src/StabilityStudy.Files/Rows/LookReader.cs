using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads looks.csv: the looks at other data that belong to what is analyzed.</summary>
internal static class LookReader
{
    /// <summary>Reads the file.</summary>
    public static ImmutableArray<EarlierLook> Read(
        ReadOnlyMemory<byte> utf8,
        KnownCodes known,
        QueryList queries
    ) =>
        [
            .. RowTable<LookRow>
                .Read(
                    TablePart.Of(utf8, linesBefore: 0),
                    StudyFileNames.Looks,
                    LookColumns.Table.Columns.WithSourceRow(),
                    known,
                    queries,
                    ReadRow,
                    row => new TubeKey(row.Data, row.Pairs)
                )
                .Rows.GroupBy(row => (row.Look, row.At, row.Action, row.Data))
                .Select(look => new EarlierLook(
                    look.Key.Look,
                    look.Key.At,
                    look.Key.Action,
                    look.Key.Data,
                    [
                        .. look.GroupBy(row => (row.Analyte, row.Group, row.Storage, row.TimePoint))
                            .Select(Cell)
                            .OfType<LookedAtCell>(),
                    ]
                )),
        ];

    private static LookedAtCell? Cell(
        IGrouping<(string Analyte, string Group, string Storage, string TimePoint), LookRow> rows
    )
    {
        var first = rows.First();
        return LookRow.KeyOf(first.Analyte, first.Group, first.Storage, first.TimePoint) is { } key
            ? new(
                key,
                first.Planned,
                first.Usable,
                first.State,
                first.Counted,
                first.Conclusion,
                [.. rows.SelectMany(row => LookRow.PairsOf(row.Pairs))]
            )
            : null;
    }

    private static LookRow ReadRow(CsvRow row) =>
        new(
            row.Line,
            row.Read(LookColumns.Look) ?? 0,
            row.Read(LookColumns.At),
            row.Read(LookColumns.Action),
            row.Read(LookColumns.Data),
            row.Read(LookColumns.Analyte),
            row.Read(LookColumns.Group),
            row.Read(LookColumns.Storage),
            row.Read(LookColumns.TimePoint),
            row.Read(LookColumns.Planned) ?? 0,
            row.Read(LookColumns.Usable) ?? 0,
            row.Read(LookColumns.State),
            row.Read(LookColumns.Counted) ?? 0,
            row.Read(LookColumns.Conclusion),
            row.Read(LookColumns.Pairs)
        );
}

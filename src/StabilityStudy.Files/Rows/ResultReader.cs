using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads results.csv: a row a result.</summary>
internal static class ResultReader
{
    /// <summary>Reads the rows that can be read.</summary>
    public static RowTable<ResultRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries
    ) =>
        RowTable<ResultRow>.Read(
            utf8,
            fileName,
            columns,
            known,
            queries,
            ReadRow,
            result => new TubeKey(result.Specimen, result.Tube)
        );

    private static ResultRow ReadRow(CsvRow row)
    {
        var analyte = row.Read(ResultColumns.Analyte);
        var planned = row.Known.AnalyteById.GetValueOrDefault(analyte);
        var result = ResultFields.ReadResult(row, planned, ResultColumns.Result);
        return new(
            SourceRow: row.Line,
            Specimen: row.Read(ResultColumns.Specimen),
            Tube: row.Read(ResultColumns.Tube),
            Analyte: analyte,
            Occasion: row.Read(ResultColumns.TimePoint),
            Replicate: row.Read(ResultColumns.Replicate) ?? 1,
            TestedAt: row.Read(ResultColumns.TestedAt, isRequired: result is not MissingResult),
            Result: result,
            Unit: ResultFields.ReadUnit(row, result, planned),
            Run: row.Read(ResultColumns.Run),
            Instrument: row.Read(ResultColumns.Instrument),
            Lot: row.Read(ResultColumns.Lot),
            Calibration: row.Read(ResultColumns.Calibration),
            Operator: row.Read(ResultColumns.Operator),
            Flag: row.Read(ResultColumns.Flag),
            Remark: row.Read(ResultColumns.Remark)
        );
    }
}

using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads results.csv: a row a result.</summary>
internal static class ResultReader
{
    /// <summary>Reads the rows that can be read.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">What the file must and may have.</param>
    /// <param name="known">What the rows may refer to.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="linesBefore">What is added to the number of a line, for files after the first of their kind.</param>
    /// <param name="written">The rows from which a canonical file was written, where that is known.</param>
    public static RowTable<ResultRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore = 0,
        WrittenRows? written = null
    ) =>
        TableHalves.Read(
            utf8,
            fileName,
            columns,
            queries,
            linesBefore,
            (part, own) =>
            {
                var same = (written ?? WrittenRows.None).ResultsFrom(
                    part.LinesBefore - linesBefore
                );
                var shared = new SharedConditions();
                return RowTable<ResultRow>.Read(
                    part,
                    fileName,
                    columns,
                    known,
                    own,
                    row => same.Take(ReadRow(row, shared)),
                    result => new TubeKey(result.Specimen, result.Tube)
                );
            }
        );

    private static ResultRow ReadRow(CsvRow row, SharedConditions shared)
    {
        var analyte = row.Read(ResultColumns.Analyte);
        var planned = row.Known.AnalyteById.GetValueOrDefault(analyte);
        var result = ResultFields.ReadResult(row, planned, ResultColumns.Result);
        var flag = row.Read(ResultColumns.Flag);
        return new(
            SourceRow: row.Line,
            Specimen: row.Read(ResultColumns.Specimen),
            Tube: row.Read(ResultColumns.Tube),
            Analyte: analyte,
            Occasion: row.Read(ResultColumns.TimePoint),
            Replicate: row.Read(ResultColumns.Replicate) ?? 1,
            TestedAt: row.Read(ResultColumns.TestedAt, isRequired: result is not MissingResult),
            Result: result,
            Conditions: shared.Of(
                analyte,
                unit: ResultFields.ReadUnit(row, result, planned),
                run: row.Read(ResultColumns.Run),
                instrument: row.Read(ResultColumns.Instrument),
                lot: row.Read(ResultColumns.Lot),
                calibration: row.Read(ResultColumns.Calibration),
                person: row.Read(ResultColumns.Operator),
                remark: row.Read(ResultColumns.Remark),
                flag: (flag, ReadMeaning(row, flag))
            )
        );
    }

    // What an undeclared flag means is nobody's guess: a mark for high results on patients with heparin is no failure.
    private static FlagMeaning ReadMeaning(CsvRow row, string flag)
    {
        if (row.Known.Flags.MeaningOf(flag) is { } meaning)
        {
            return meaning;
        }

        row.Add(
            RowQueries.FlagNotDeclared,
            ResultColumns.Flag,
            flag,
            $"Nothing says what the flag \"{flag}\" means for the result beside it.",
            $"Look it up in the instrument's manual and declare it under [read.results.values] in study.toml: flag = {{ \"{flag}\" = \"harmless\" }}, \"failed\" or \"reportable with note\"."
        );
        return FlagMeaning.Failed;
    }
}

using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

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
            queries,
            row => ReadRow(row, known),
            result => new TubeKey(result.Specimen, result.Tube)
        );

    private static ResultRow ReadRow(CsvRow row, KnownCodes known)
    {
        var analyte = row.RequireKnown("analyte", known.Analytes);
        var planned = known.AnalyteById.GetValueOrDefault(analyte);
        var result = ResultFields.ReadResult(row, planned, "result");
        return new(
            SourceRow: row.Line,
            Specimen: row.RequireStudyCode("specimen"),
            Tube: row.RequireStudyCode("tube"),
            Analyte: analyte,
            Occasion: ReadOccasion(row, known),
            Replicate: row.OptionalWhole("replicate", NumberRange.Replicate) ?? 1,
            TestedAt: result is MissingResult
                ? row.OptionalTime("tested_at", known.Times)
                : row.RequireTime("tested_at", known.Times),
            Result: result,
            Unit: ResultFields.ReadUnit(row, result, planned),
            Run: row.OptionalText("run"),
            Instrument: row.OptionalKnown("instrument", known.Instruments),
            Lot: row.OptionalKnown("lot", known.Lots),
            Calibration: row.OptionalText("calibration"),
            Operator: row.OptionalKnown("operator", known.People),
            Flag: row.FreeText("flag"),
            Remark: row.FreeText("remark")
        );
    }

    /// <summary>Reads "time_point".</summary>
    public static TestOccasion ReadOccasion(CsvRow row, KnownCodes known)
    {
        var text = row.RequireText("time_point");
        var planned = known.TimePoints;
        if (text.Length == 0)
        {
            return default;
        }

        if (known.OccasionByWord.TryGetValue(text, out var occasion))
        {
            return occasion;
        }

        if (DurationText.TryParse(text, out var delay))
        {
            var point = new TimePoint(delay);
            if (planned is null || planned.Value.Contains(point))
            {
                return new TestOccasion(point);
            }
        }
        else if (planned is null)
        {
            return default;
        }

        var words = (planned ?? [])
            .Select(point => point.ToString())
            .Prepend(TestOccasion.BaselineWord);
        row.Add(
            RowQueries.UnknownTimePoint,
            "time_point",
            text,
            $"\"{text}\" is not planned in the protocol.{NearestWord.Question(text, words)}",
            $"Write one of {string.Join(", ", words.Select(word => $"\"{word}\""))}."
        );
        return default;
    }
}

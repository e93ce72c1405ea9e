using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Rows;

/// <summary>
/// Reads a file of which each row is a pair: a baseline and a delayed result of one specimen. Each row becomes two tubes,
/// "B" and one named after its time point, and two results; rows of one specimen share the baseline. Fill, clot and
/// hemolysis are those of the delayed tube; those of the baseline tube have columns of their own.
/// </summary>
internal static class PairReader
{
    private const string BaselineTube = "B";

    /// <summary>Reads the rows that can be read.</summary>
    public static (RowTable<TubeRow> Tubes, RowTable<ResultRow> Results) Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        ProtocolDraft? protocol,
        QueryList queries
    )
    {
        var rows = new PairRows();
        var keys = new HashSet<TubeKey>();
        var reach = CsvFile.Read(
            utf8,
            fileName,
            columns,
            queries,
            row =>
            {
                var (baseline, delayed) = ReadTubes(row, known, protocol);
                keys.Add(new TubeKey(baseline.Specimen, BaselineTube));
                keys.Add(new TubeKey(baseline.Specimen, delayed.Tube));
                var results = ReadResults(row, delayed, known, protocol);
                if (row.IsSound)
                {
                    rows.Add(row, baseline, delayed, results.Baseline, results.Delayed);
                }
            }
        );
        var tubes = RowTable<TubeRow>.Of(fileName, reach, rows.Tubes, keys, queries);
        return (
            tubes,
            new RowTable<ResultRow>(
                fileName,
                tubes.KnowsEveryTube,
                rows.Results.DrainToImmutable(),
                keys
            )
        );
    }

    private static (TubeRow Baseline, TubeRow Delayed) ReadTubes(
        CsvRow row,
        KnownCodes known,
        ProtocolDraft? protocol
    )
    {
        var specimen = row.RequireStudyCode("specimen");
        var hasSubject = row.OptionalText("subject").Length > 0;
        var baseline = new TubeRow(
            SourceRow: row.Line,
            Specimen: specimen,
            Tube: BaselineTube,
            Subject: hasSubject ? row.RequireStudyCode("subject") : specimen,
            Group: CodeOrOnly(
                row,
                "group",
                known.Groups,
                protocol?.Groups.Values.Select(group => group.Id)
            ),
            Storage: CodeOrOnly(
                row,
                "storage",
                known.Storages,
                protocol?.Storages.Values.Select(storage => storage.Id)
            ),
            DrawPosition: null,
            CollectedAt: row.RequireTime("collected_at", known.Times),
            ReceivedAt: null,
            SpunAt: row.OptionalTime("baseline_spun_at", known.Times),
            SeparatedAt: null,
            FrozenAt: null,
            ThawedAt: null,
            FillPercent: row.OptionalDecimal("baseline_fill_percent", NumberRange.FillPercent),
            Inversions: null,
            HematocritPercent: row.OptionalDecimal(
                "hematocrit_percent",
                NumberRange.HematocritPercent
            ),
            Hemolysis: row.Choice("baseline_hemolysis", FileWords.HemolysisGrades),
            Clot: row.Choice("baseline_clot", FileWords.ClotChecks),
            Device: "",
            Origin: row.Choice("origin", FileWords.Origins)
        );
        var delayed = baseline with
        {
            Tube = ReadTimePoint(row, known, protocol).ToString(),
            SpunAt = row.OptionalTime("spun_at", known.Times),
            FillPercent = row.OptionalDecimal("fill_percent", NumberRange.FillPercent),
            Hemolysis = row.Choice("hemolysis", FileWords.HemolysisGrades),
            Clot = row.Choice("clot", FileWords.ClotChecks),
        };
        return (baseline, delayed);
    }

    private static (ResultRow Baseline, ResultRow Delayed) ReadResults(
        CsvRow row,
        TubeRow delayed,
        KnownCodes known,
        ProtocolDraft? protocol
    )
    {
        var code = CodeOrOnly(
            row,
            "analyte",
            known.Analytes,
            protocol?.Analytes.Values.Select(analyte => analyte.Id)
        );
        var analyte = known.AnalyteById.GetValueOrDefault(code);
        var occasion = known.OccasionByWord.GetValueOrDefault(delayed.Tube);
        return (
            ReadResult("baseline", BaselineTube, default),
            ReadResult("delayed", delayed.Tube, occasion)
        );

        ResultRow ReadResult(string half, string tube, TestOccasion tested)
        {
            var result = ResultFields.ReadResult(row, analyte, half + "_result");
            var unit =
                row.OptionalText("unit").Length > 0 || analyte is null
                    ? ResultFields.ReadUnit(row, result, analyte)
                    : analyte.Unit;
            return new(
                SourceRow: row.Line,
                Specimen: delayed.Specimen,
                Tube: tube,
                Analyte: code,
                Occasion: tested,
                Replicate: 1,
                TestedAt: result is MissingResult
                    ? row.OptionalTime(half + "_tested_at", known.Times)
                    : row.RequireTime(half + "_tested_at", known.Times),
                Result: result,
                Unit: unit,
                Run: row.OptionalText(half + "_run"),
                Instrument: row.OptionalKnown("instrument", known.Instruments),
                Lot: row.OptionalKnown("lot", known.Lots),
                Calibration: "",
                Operator: "",
                Flag: "",
                Remark: ""
            );
        }
    }

    private static TestOccasion ReadTimePoint(CsvRow row, KnownCodes known, ProtocolDraft? protocol)
    {
        if (row.OptionalText("time_point").Length == 0 && protocol?.TimePoints is [var only])
        {
            return new TestOccasion(only);
        }

        var occasion = ResultReader.ReadOccasion(row, known);
        if (row.IsSound && occasion.IsBaseline && protocol is not null)
        {
            row.Add(
                RowQueries.UnknownTimePoint,
                "time_point",
                TestOccasion.BaselineWord,
                "The time point of a pair is that of its delayed result.",
                "Write the planned delay."
            );
        }

        return occasion;
    }

    /// <summary>A code; when the row has none and the protocol has just one, that one.</summary>
    private static string CodeOrOnly(
        CsvRow row,
        string column,
        CodeSet known,
        IEnumerable<string>? planned
    ) =>
        row.OptionalText(column).Length == 0 && planned?.ToArray() is [var only]
            ? only
            : row.RequireKnown(column, known);
}

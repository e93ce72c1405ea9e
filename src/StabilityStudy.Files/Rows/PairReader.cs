using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Protocols;

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
        QueryList queries,
        int linesBefore
    )
    {
        var rows = new PairRows();
        var keys = new HashSet<TubeKey>();
        var reach = DataTable.Read(
            utf8,
            fileName,
            columns,
            known,
            queries,
            row =>
            {
                var (baseline, delayed) = ReadTubes(row, protocol);
                keys.Add(new TubeKey(baseline.Specimen, BaselineTube));
                keys.Add(new TubeKey(baseline.Specimen, delayed.Tube));
                var results = ReadResults(row, delayed, protocol);
                if (row.IsSound)
                {
                    rows.Add(row, baseline, delayed, results.Baseline, results.Delayed);
                }
            },
            linesBefore
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
        ProtocolDraft? protocol
    )
    {
        var specimen = row.Read(PairColumns.Specimen);
        var baseline = new TubeRow(
            SourceRow: row.Line,
            Specimen: specimen,
            Tube: BaselineTube,
            Subject: row.IsEmpty(PairColumns.Subject) ? specimen : row.Read(PairColumns.Subject),
            Group: CodeOrOnly(
                row,
                PairColumns.Group,
                protocol?.Groups.Values.Select(group => group.Id)
            ),
            Storage: CodeOrOnly(
                row,
                PairColumns.Storage,
                protocol?.Storages.Values.Select(storage => storage.Id)
            ),
            DrawPosition: null,
            CollectedAt: row.Read(PairColumns.CollectedAt),
            ReceivedAt: null,
            SpunAt: row.Read(PairColumns.BaselineSpunAt),
            SeparatedAt: null,
            FrozenAt: null,
            ThawedAt: null,
            FillPercent: row.Read(PairColumns.BaselineFillPercent),
            Inversions: null,
            HematocritPercent: row.Read(PairColumns.HematocritPercent),
            Hemolysis: row.Read(PairColumns.BaselineHemolysis),
            Clot: row.Read(PairColumns.BaselineClot),
            Device: "",
            Origin: row.Read(PairColumns.Origin)
        );
        var delayed = baseline with
        {
            Tube = ReadTimePoint(row, protocol).ToString(),
            SpunAt = row.Read(PairColumns.SpunAt),
            FillPercent = row.Read(PairColumns.FillPercent),
            Hemolysis = row.Read(PairColumns.Hemolysis),
            Clot = row.Read(PairColumns.Clot),
        };
        return (baseline, delayed);
    }

    private static (ResultRow Baseline, ResultRow Delayed) ReadResults(
        CsvRow row,
        TubeRow delayed,
        ProtocolDraft? protocol
    )
    {
        var code = CodeOrOnly(
            row,
            PairColumns.Analyte,
            protocol?.Analytes.Values.Select(analyte => analyte.Id)
        );
        var analyte = row.Known.AnalyteById.GetValueOrDefault(code);
        var occasion = row.Known.OccasionByWord.GetValueOrDefault(delayed.Tube);
        return (
            ReadResult(PairColumns.Baseline, BaselineTube, default),
            ReadResult(PairColumns.Delayed, delayed.Tube, occasion)
        );

        ResultRow ReadResult(PairHalf half, string tube, TestOccasion tested)
        {
            var result = ResultFields.ReadResult(row, analyte, half.Result);
            var unit =
                !row.IsEmpty(PairColumns.Unit) || analyte is null
                    ? ResultFields.ReadUnit(row, result, analyte)
                    : analyte.Unit;
            return new(
                SourceRow: row.Line,
                Specimen: delayed.Specimen,
                Tube: tube,
                Analyte: code,
                Occasion: tested,
                Replicate: 1,
                TestedAt: row.Read(half.TestedAt, isRequired: result is not MissingResult),
                Result: result,
                Conditions: new(
                    Unit: unit,
                    Run: row.Read(half.Run),
                    Instrument: row.Read(PairColumns.Instrument),
                    Lot: row.Read(PairColumns.Lot),
                    Calibration: "",
                    Operator: "",
                    Flag: "",
                    Remark: ""
                )
            );
        }
    }

    private static TestOccasion ReadTimePoint(CsvRow row, ProtocolDraft? protocol)
    {
        if (row.IsEmpty(PairColumns.TimePoint) && protocol?.TimePoints is [var only])
        {
            return new TestOccasion(only);
        }

        var occasion = row.Read(PairColumns.TimePoint, isRequired: true);
        if (row.IsSound && occasion.IsBaseline && protocol is not null)
        {
            row.Add(
                RowQueries.UnknownTimePoint,
                PairColumns.TimePoint,
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
        Column<string> column,
        IEnumerable<string>? planned
    ) =>
        row.IsEmpty(column) && planned?.ToArray() is [var only]
            ? only
            : row.Read(column, isRequired: true);
}

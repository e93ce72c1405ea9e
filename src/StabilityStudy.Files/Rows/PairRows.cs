using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>The tubes and results of pairs, each tube and each baseline once.</summary>
internal sealed class PairRows
{
    private readonly Dictionary<TubeKey, TubeRow> _tubes = [];
    private readonly Dictionary<(string Specimen, string Analyte), ResultRow> _baselines = [];

    /// <summary>The tubes.</summary>
    public ImmutableArray<TubeRow>.Builder Tubes { get; } = ImmutableArray.CreateBuilder<TubeRow>();

    /// <summary>The results.</summary>
    public ImmutableArray<ResultRow>.Builder Results { get; } =
        ImmutableArray.CreateBuilder<ResultRow>();

    /// <summary>Adds a pair; what an earlier row of the specimen said of the same tube or baseline must be the same here.</summary>
    public void Add(
        CsvRow row,
        TubeRow baselineTube,
        TubeRow delayedTube,
        ResultRow baseline,
        ResultRow delayed
    )
    {
        AddTube(row, baselineTube, PairColumns.BaselineSpunAt);
        AddTube(row, delayedTube, PairColumns.SpunAt);
        if (_baselines.TryAdd((baseline.Specimen, baseline.Analyte), baseline))
        {
            Results.Add(baseline);
        }
        else
        {
            var first = _baselines[(baseline.Specimen, baseline.Analyte)];
            Compare(
                row,
                first.SourceRow,
                PairColumns.Baseline.TestedAt,
                first.TestedAt,
                baseline.TestedAt
            );
            Compare(
                row,
                first.SourceRow,
                PairColumns.Baseline.Result,
                first.Result,
                baseline.Result
            );
            Compare(row, first.SourceRow, PairColumns.Unit, first.Unit, baseline.Unit);
            Compare(row, first.SourceRow, PairColumns.Baseline.Run, first.Run, baseline.Run);
            Compare(
                row,
                first.SourceRow,
                PairColumns.Instrument,
                first.Instrument,
                baseline.Instrument
            );
            Compare(row, first.SourceRow, PairColumns.Lot, first.Lot, baseline.Lot);
        }

        Results.Add(delayed);
    }

    private void AddTube(CsvRow row, TubeRow tube, Column spunColumn)
    {
        var key = new TubeKey(tube.Specimen, tube.Tube);
        if (_tubes.TryAdd(key, tube))
        {
            Tubes.Add(tube);
            return;
        }

        var first = _tubes[key];
        Compare(row, first.SourceRow, PairColumns.Subject, first.Subject, tube.Subject);
        Compare(row, first.SourceRow, PairColumns.Group, first.Group, tube.Group);
        Compare(row, first.SourceRow, PairColumns.Storage, first.Storage, tube.Storage);
        Compare(row, first.SourceRow, PairColumns.CollectedAt, first.CollectedAt, tube.CollectedAt);
        Compare(row, first.SourceRow, spunColumn, first.SpunAt, tube.SpunAt);
        Compare(row, first.SourceRow, PairColumns.FillPercent, first.FillPercent, tube.FillPercent);
        Compare(
            row,
            first.SourceRow,
            PairColumns.HematocritPercent,
            first.HematocritPercent,
            tube.HematocritPercent
        );
        Compare(row, first.SourceRow, PairColumns.Hemolysis, first.Hemolysis, tube.Hemolysis);
        Compare(row, first.SourceRow, PairColumns.Clot, first.Clot, tube.Clot);
        Compare(row, first.SourceRow, PairColumns.Origin, first.Origin, tube.Origin);
    }

    private static void Compare<T>(CsvRow row, int firstLine, Column column, T before, T now)
    {
        if (!EqualityComparer<T>.Default.Equals(before, now))
        {
            row.Add(
                RowQueries.PairsDisagree,
                column,
                row.Field(column),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"\"{column.Name}\" differs from line {firstLine}, which has the same specimen and tube."
                )
            );
        }
    }
}

using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of a file with a row a pair, which has no canonical form of its own.</summary>
internal static class PairColumns
{
    private const string Planned = "; may be empty where there is one";

    private static readonly List<Column> Added = [];

    // csharpier-ignore-start
    public static readonly Column<string> Specimen = Add(TubeColumns.Specimen, "specimen", Required, TubeColumns.Specimen.Note);
    public static readonly Column<string> Subject = Add(TubeColumns.Subject, "subject", Optional, "study code of the person; the specimen's when empty");
    public static readonly Column<string> Group = Add(TubeColumns.Group, "group", Depends, TubeColumns.Group.Note + Planned);
    public static readonly Column<string> Storage = Add(TubeColumns.Storage, "storage", Depends, TubeColumns.Storage.Note + Planned);
    public static readonly Column<string> Analyte = Add(ResultColumns.Analyte, "analyte", Depends, ResultColumns.Analyte.Note + Planned);
    public static readonly Column<DateTimeOffset> CollectedAt = Add(TubeColumns.CollectedAt, "collected_at", Required, TubeColumns.CollectedAt.Note);
    private static readonly Column<DateTimeOffset?> BaselineTestedAt = Add(ResultColumns.TestedAt, "baseline_tested_at", Required, "when the baseline was tested");
    private static readonly Column<string> BaselineResult = Add(ResultColumns.Result, "baseline_result", Required, "as reported");
    public static readonly Column<TestOccasion> TimePoint = Add(ResultColumns.TimePoint, "time_point", Depends, ResultColumns.TimePoint.Note + Planned);
    private static readonly Column<DateTimeOffset?> DelayedTestedAt = Add(ResultColumns.TestedAt, "delayed_tested_at", Required, "when the delayed tube was tested");
    private static readonly Column<string> DelayedResult = Add(ResultColumns.Result, "delayed_result", Required, "as reported");
    private static readonly Column<string> BaselineRun = Add(ResultColumns.Run, "baseline_run", Optional, "run of the baseline");
    private static readonly Column<string> DelayedRun = Add(ResultColumns.Run, "delayed_run", Optional, "run of the delayed result");
    public static readonly Column<string> Instrument = Add(ResultColumns.Instrument, "instrument", Optional, ResultColumns.Instrument.Note);
    public static readonly Column<string> Lot = Add(ResultColumns.Lot, "lot", Optional, ResultColumns.Lot.Note);
    public static readonly Column<DateTimeOffset?> SpunAt = Add(TubeColumns.SpunAt, "spun_at", Depends, "when the delayed tube was spun; without it its result is left out");
    public static readonly Column<DateTimeOffset?> BaselineSpunAt = Add(TubeColumns.SpunAt, "baseline_spun_at", Optional, "when the baseline tube was spun; needed where the group limits it");
    public static readonly Column<decimal?> FillPercent = Add(TubeColumns.FillPercent, "fill_percent", Optional, "fill of the delayed tube, percent of nominal");
    public static readonly Column<decimal?> BaselineFillPercent = Add(TubeColumns.FillPercent, "baseline_fill_percent", Optional, "fill of the baseline tube");
    public static readonly Column<decimal?> HematocritPercent = Add(TubeColumns.HematocritPercent, "hematocrit_percent", Optional, "hematocrit, percent");
    public static readonly Column<ClotCheck> Clot = Add(TubeColumns.Clot, "clot", Optional, "whether there was a clot in the delayed tube");
    public static readonly Column<ClotCheck> BaselineClot = Add(TubeColumns.Clot, "baseline_clot", Optional, "whether there was a clot in the baseline tube");
    public static readonly Column<Hemolysis> Hemolysis = Add(TubeColumns.Hemolysis, "hemolysis", Optional, "grade of hemolysis of the delayed tube");
    public static readonly Column<Hemolysis> BaselineHemolysis = Add(TubeColumns.Hemolysis, "baseline_hemolysis", Optional, "the same of the baseline tube");
    public static readonly Column<Origin> Origin = Add(TubeColumns.Origin, "origin", Optional, TubeColumns.Origin.Note);
    public static readonly Column<string> Unit = Add(ResultColumns.Unit, "unit", Optional, "unit of both results; that of the protocol when empty");
    // csharpier-ignore-end

    /// <summary>The columns of the baseline result.</summary>
    public static readonly PairHalf Baseline = new(BaselineTestedAt, BaselineResult, BaselineRun);

    /// <summary>The columns of the delayed result.</summary>
    public static readonly PairHalf Delayed = new(DelayedTestedAt, DelayedResult, DelayedRun);

    /// <summary>What the file must and may have.</summary>
    public static readonly CsvColumns Columns = new("pairs", [.. Added]);

    private static Column<T> Add<T>(Column<T> alike, string name, Need need, string note)
    {
        var column = alike with { Name = name, Need = need, Note = note };
        Added.Add(column);
        return column;
    }
}

/// <summary>The columns that each result of a pair has of its own.</summary>
internal sealed record PairHalf(
    Column<DateTimeOffset?> TestedAt,
    Column<string> Result,
    Column<string> Run
);

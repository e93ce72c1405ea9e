using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of a pilot file: a row a pair of results, for the spread that a plan supposes.</summary>
internal static class PilotColumns
{
    public static readonly ColumnTable<PilotPair> Table = new("pilot");

    // csharpier-ignore-start
    public static readonly Column<decimal?> Baseline = Table.Add("baseline", Required, Number(NumberRange.AboveZero), row => (decimal?)row.Baseline, "first result of a specimen", "31.4");
    public static readonly Column<decimal?> Delayed = Table.Add("delayed", Required, Number(NumberRange.AboveZero), row => (decimal?)row.Delayed, "its result after waiting", "32.9");
    public static readonly Column<string> Analyte = Table.Add("analyte", Optional, Known("an analyte of the protocol", known => known.Analytes), row => row.Analyte ?? "", "what was measured; every analyte of the plan when empty", "aPTT");
    public static readonly Column<string> Group = Table.Add("group", Optional, Known("a patient group of the protocol", known => known.Groups), row => row.Group ?? "", "patient group; every group when empty", "none");
    public static readonly Column<TestOccasion> TimePoint = Table.Add("time_point", Optional, Occasion, row => new TestOccasion(row.TimePoint), "after how long the second was tested; any time when empty", "8 h");
    // csharpier-ignore-end
}

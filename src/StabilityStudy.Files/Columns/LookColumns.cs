using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Looks;
using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of looks.csv, which the program writes from the record of the study and a report carries.</summary>
internal static class LookColumns
{
    private const int MostSpecimens = 1_000_000;

    public static readonly ColumnTable<LookRow> Table = new("looks");

    // csharpier-ignore-start
    public static readonly Column<int?> Look = Table.Add("look", Required, Whole(NumberRange.Whole(1, MostSpecimens)), row => (int?)row.Look, "number of the look", "1");
    public static readonly Column<DateTimeOffset> At = Table.Add("at", Required, Time, row => row.At, "when, by the clock of that computer", "2026-05-02T14:05:00-04:00");
    public static readonly Column<string> Action = Table.Add("action", Required, Text, row => row.Action, "what showed the figures: analyze or report", "report");
    public static readonly Column<string> Data = Table.Add("data", Required, Text, row => row.Data, "SHA-256 of the data and the decisions about them", "9f2c…");
    public static readonly Column<string> Analyte = Table.Add("analyte", Required, Text, row => row.Analyte, "analyte", "aPTT");
    public static readonly Column<string> Group = Table.Add("group", Required, Text, row => row.Group, "patient group", "none");
    public static readonly Column<string> Storage = Table.Add("storage", Required, Text, row => row.Storage, "storage", "wb-rt");
    public static readonly Column<string> TimePoint = Table.Add("time_point", Required, Text, row => row.TimePoint, "time point", "6 h");
    public static readonly Column<int?> Planned = Table.Add("planned", Required, Whole(NumberRange.Whole(0, MostSpecimens)), row => (int?)row.Planned, "specimens planned at that time", "40");
    public static readonly Column<int?> Usable = Table.Add("usable", Required, Whole(NumberRange.Whole(0, MostSpecimens)), row => (int?)row.Usable, "specimens with a valid baseline", "30");
    public static readonly Column<CollectionState> State = Table.Add("collection", Required, Word(FileWords.CollectionStates), row => row.State, "how far collection was", "incomplete");
    public static readonly Column<int?> Counted = Table.Add("counted", Required, Whole(NumberRange.Whole(0, MostSpecimens)), row => (int?)row.Counted, "pairs that counted", "29");
    public static readonly Column<Conclusion> Conclusion = Table.Add("conclusion", Required, Word(FileWords.Conclusions), row => row.Conclusion, "what the time point's data alone concluded", "inconclusive");
    public static readonly Column<string> Pairs = Table.Add("pairs", Required, Text, row => row.Pairs, "specimens, each with a fingerprint of its two results or with - where it did not count", "N-001:9f2c04aa N-002:-");
    // csharpier-ignore-end
}

using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of an analyte.</summary>
internal static class AnalyteKeys
{
    /// <summary>The UCUM unit of what has none.</summary>
    private const string NoUnit = "1";

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in results.csv", "\"aPTT\"");
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "name in the report", "\"Activated partial thromboplastin time\"");
    public static readonly Key<string?> Method = Table.Add("method", Optional, OptionalText, "method principle", "\"one-stage, optical end point\"");
    public static readonly Key<string?> Loinc = Table.Add("loinc", Optional, OptionalText, "LOINC code", "\"14979-9\"");
    public static readonly Key<string> Unit = Table.Add("unit", Depends, Text.Or(NoUnit), "UCUM unit; not required with categories", "\"s\"");
    public static readonly Key<int> Decimals = Table.Add("decimals", Depends, Whole(0, 6), "decimals of a reported result; not with categories", "1");
    public static readonly TableKey StandardWindow = Table.AddTable("standard_window", Required, StandardWindowKeys.Table, "what today's rule allows", "{ time = \"4 h\", source = \"common practice\" }");
    public static readonly TableKey GroupWindows = Table.AddTables("group_windows", Optional, GroupWindowKeys.Table, "groups with another rule today", "[{ group = \"ufh\", time = \"1 h\", source = \"common practice\" }]");
    public static readonly TableKey PlannedRanges = Table.AddTables("planned_ranges", Optional, PlannedRangeKeys.Table, "span of the baselines to be collected in a group; not with categories", "[{ group = \"ufh\", range = [40.0, 110.0] }]");
    public static readonly TableKey PlannedNumbers = Table.AddTables("planned_numbers", Optional, PlannedNumberKeys.Table, "how many specimens of a group are to have a baseline in a range, for those who collect and for planning; nothing is concluded from it; not with categories", "[{ group = \"vte\", range = [0.50, 1.00], specimens = 50 }]");
    public static readonly TableKey ManufacturerLimit = Table.AddTable("manufacturer_limit", Optional, ManufacturerLimitKeys.Table, "what the manufacturer allows", "{ time = \"4 h\", document = \"instructions for use, revision 3\" }");
    public static readonly TableKey CvPercent = Table.AddTable("cv_percent", Optional, CvPercentKeys.Table, "imprecision; not with categories", "{ between_run = 2.5 }");
    public static readonly Key<MeasuringInterval?> MeasuringInterval = Table.Add("measuring_interval", Optional, Interval(NumberRange.Any, allowEqual: false).As<MeasuringInterval?>(null, ends => new(ends.Lowest, ends.Highest)), "lowest and highest number reported; not with categories", "[20.0, 180.0]");
    public static readonly Key<ImmutableArray<decimal>> DecisionLevels = Table.Add("decision_levels", Optional, Ascending("decision levels"), "values at which care changes; not with categories", "[40.0, 60.0]");
    public static readonly TableKey LevelMeanings = Table.AddTables("level_meanings", Optional, LevelMeaningKeys.Table, "what the wrong side of a decision level means for a patient; not with categories", "[{ level = 0.50, below = \"a thrombosis could be ruled out wrongly\" }]");
    public static readonly Key<decimal> ErrorVarianceRatio = Table.Add("error_variance_ratio", Optional, Number(NumberRange.AboveZero).Or(1), "error variance of the baseline ÷ that of the delayed result; 1 when not given; not with categories", "0.5");
    public static readonly Key<DriftShape> DriftShape = Table.Add("drift_shape", Optional, Word(FileWords.DriftShapes).Or(Statistics.Drift.DriftShape.Linear), "shape of the change over time; linear when not given; not with categories", "\"logarithmic\"");
    public static readonly Key<ImmutableArray<TimeSpan>> TimePoints = Table.Add("time_points", Optional, Durations, "those of the protocol's at which it is tested; all when not given", "[\"6 h\"]");
    public static readonly Key<ImmutableArray<string>> Groups = Table.Add("groups", Optional, Texts, "groups in which it is studied; all when not given", "[\"none\"]");
    public static readonly Key<ImmutableArray<string>> Storages = Table.Add("storages", Optional, Texts, "storages in which it is studied; all when not given", "[\"wb-rt\"]");
    public static readonly Key<ImmutableArray<string>> Categories = Table.Add("categories", Optional, Texts.When("two or more texts, each once", AreDifferent), "results of a qualitative test, the most negative first", "[\"negative\", \"weak positive\", \"positive\"]");
    public static readonly Key<string?> RatioOf = Table.Add("ratio_of", Optional, OptionalText, "the prothrombin time from which this ratio is computed; not with categories", "\"PT\"");
    public static readonly TableKey OtherWindows = Table.AddTables("other_windows", Optional, OtherWindowKeys.Table, "windows that other rules give today, to be chosen instead; nothing is concluded from them", "[{ name = \"older practice\", time = \"4 h\", source = \"guideline of 2008, as quoted by a secondary page\" }]");
    public static readonly TableKey ExpectedChanges = Table.AddTables("expected_changes", Optional, ExpectedChangeKeys.Table, "what others found, for planning; nothing is concluded from it; not with categories", "[{ group = \"none\", time = \"6 h\", percent = 4.8, source = \"doi 10.1515/cclm-2025-0117\", chance = \"good\" }]");
    // csharpier-ignore-end

    /// <summary>Keys that mean something for numbers only.</summary>
    public static readonly ImmutableArray<Key> OfNumbers =
    [
        Decimals,
        CvPercent,
        MeasuringInterval,
        PlannedRanges,
        PlannedNumbers,
        DecisionLevels,
        LevelMeanings,
        ErrorVarianceRatio,
        DriftShape,
        RatioOf,
        ExpectedChanges,
    ];

    private static bool AreDifferent(TomlTable table, Key key, ImmutableArray<string> categories) =>
        (
            categories.Length >= 2
            && categories.Distinct(StringComparer.OrdinalIgnoreCase).Count() == categories.Length
        )
        || table.Refuse(
            key,
            FileQueries.OutOfRange,
            string.Join(", ", categories),
            "A qualitative test has two or more different results.",
            "List them from the most negative to the most positive, each once."
        );
}

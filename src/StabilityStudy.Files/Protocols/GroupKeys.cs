using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of a patient group.</summary>
internal static class GroupKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in specimens.csv", "\"none\"");
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "name in the report", "\"No anticoagulant\"");
    public static readonly Key<int> Specimens = Table.Add("specimens", Required, Whole(1, 100_000), "planned number of specimens", "40");
    public static readonly Key<TimeSpan?> BaselineSpunWithin = Table.Add("baseline_spun_within", Optional, Duration.OrNone(), "longest time from collection to spinning of the baseline tube", "\"1 h\"");
    public static readonly Key<string?> Why = Table.Add("why", Optional, OptionalText, "why so many specimens; stands in the report", "\"with 40, 2 may change by more than the limit and 85 % are still shown\"");
    public static readonly Key<Anticoagulant?> Anticoagulant = Table.Add("anticoagulant", Optional, Word(FileWords.Anticoagulants).OrNone(), "anticoagulant of its patients; taken from id and name when not given", "\"heparin\"");
    // csharpier-ignore-end
}

/// <summary>The keys of "eligibility".</summary>
internal static class EligibilityKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<decimal?> FillPercentMinimum = Table.Add("fill_percent_min", Optional, Number(NumberRange.Percent).OrNone(), "least fill, percent of nominal", "90");
    public static readonly Key<decimal?> HematocritPercentMaximum = Table.Add("hematocrit_percent_max", Optional, Number(NumberRange.Percent).OrNone(), "highest hematocrit, percent", "55");
    public static readonly Key<bool> Clot = Table.Add("clot", Required, Word(FileWords.ClotRules), "what becomes of a tube with a clot", "\"reject\"");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where the rules come from", "\"common practice\"");
    // csharpier-ignore-end
}

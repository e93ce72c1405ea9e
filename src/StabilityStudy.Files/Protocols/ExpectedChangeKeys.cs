using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of "other_windows".</summary>
internal static class OtherWindowKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "what the rule is called", "\"older practice\"");
    public static readonly Key<string?> Group = Table.Add("group", Optional, OptionalText, "code of the group that it is for; all when not given", "\"ufh\"");
    public static readonly Key<TimeSpan> Time = Table.Add("time", Required, LongDuration, "longest time from collection to test", "\"4 h\"");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "the rule", "\"guideline of 2008, as quoted by a secondary page\"");
    // csharpier-ignore-end

    public static OtherWindow Read(TomlTable table) =>
        new(table.Read(Name), new(table.Read(Time), table.Read(Source)))
        {
            Group = table.Read(Group),
        };
}

/// <summary>The keys of "expected_changes".</summary>
internal static class ExpectedChangeKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Group = Table.Add("group", Required, Text, "code of the group", "\"none\"");
    public static readonly Key<string?> Storage = Table.Add("storage", Optional, OptionalText, "code of the storage; all of the analyte when not given", "\"wb-rt\"");
    public static readonly Key<TimeSpan> Time = Table.Add("time", Required, LongDuration, "planned delay", "\"6 h\"");
    public static readonly Key<decimal> Percent = Table.Add("percent", Required, Number(NumberRange.ChangePercent), "expected mean change, percent of the baseline, counted from where the protocol counts", "4.8");
    public static readonly Key<decimal> SpecimenSdPercent = Table.Add("specimen_sd_percent", Optional, Number(NumberRange.AboveZero).Or(3), "SD of the change among specimens, percent; 3 when not given", "3");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "where it was published, or that nothing was found", "\"doi 10.1515/cclm-2025-0117\"");
    public static readonly Key<string?> Criterion = Table.Add("criterion", Optional, OptionalText, "by what the author called results stable, where no size of change was published", "\"mean change up to 10 %\"");
    public static readonly Key<ChanceOfSupport> Chance = Table.Add("chance", Required, Word(FileWords.Chances), "chance of supported with this change: likely from 80 %, open from 50 %, doubtful from 20 %, unlikely from 5 %, out of reach below", "\"open\"");
    public static readonly Key<string?> Why = Table.Add("why", Optional, OptionalText, "why a time is studied that will hardly be supported", "\"shows by how much today's rule is exceeded\"");
    // csharpier-ignore-end

    public static ExpectedChange Read(TomlTable table) =>
        new(
            table.Read(Group),
            new(table.Read(Time)),
            table.Read(Percent),
            table.Read(Source),
            table.Read(Criterion),
            table.Read(Chance)
        )
        {
            Storage = table.Read(Storage),
            SpecimenSdPercent = table.Read(SpecimenSdPercent),
            Why = table.Read(Why),
        };
}

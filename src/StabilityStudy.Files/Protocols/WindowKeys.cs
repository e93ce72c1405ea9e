using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of "standard_window".</summary>
internal static class StandardWindowKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<TimeSpan> Time = Table.Add("time", Required, LongDuration, "longest time from collection to test", "\"4 h\"");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "the rule", "\"common practice\"");
    public static readonly Key<TimeSpan?> AsPlasma = Table.Add("as_plasma", Optional, LongDuration.OrNone(), "second step of the rule: longest time from collection to test of plasma that was taken off the cells within time; no second step when not given", "\"4 h\"");
    // csharpier-ignore-end
}

/// <summary>The keys of "group_windows".</summary>
internal static class GroupWindowKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Group = Table.Add("group", Required, Text, "code of the group", "\"ufh\"");
    public static readonly Key<TimeSpan> Time = Table.Add("time", Required, LongDuration, "longest time from collection to test", "\"1 h\"");
    public static readonly Key<string> Source = Table.Add("source", Required, Text, "the rule", "\"common practice\"");
    public static readonly Key<string?> Storage = Table.Add("storage", Optional, OptionalText, "code of the storage to which the rule is confined, a rule of the group and this storage coming before one of the group; every storage when not given", "\"wb-rt\"");
    public static readonly Key<TimeSpan?> AsPlasma = Table.Add("as_plasma", Optional, LongDuration.OrNone(), "second step of the rule: longest time from collection to test of plasma that was taken off the cells within time; no second step when not given", "\"4 h\"");
    public static readonly Key<ImmutableArray<TimeSpan>> TimePoints = Table.Add("time_points", Optional, Durations, "those of the protocol's at which it is tested in this group; those of the analyte when not given; not with storage", "[\"2 h\"]");
    // csharpier-ignore-end
}

/// <summary>The keys of "planned_ranges".</summary>
internal static class PlannedRangeKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Group = Table.Add("group", Required, Text, "code of the group", "\"ufh\"");
    public static readonly Key<MeasuringInterval?> Range = Table.Add("range", Required, Interval(NumberRange.AboveZero, allowEqual: false).As<MeasuringInterval?>(null, ends => new(ends.Lowest, ends.Highest)), "lowest and highest baseline to be collected, in the unit", "[40.0, 110.0]");
    // csharpier-ignore-end
}

/// <summary>The keys of "planned_numbers".</summary>
internal static class PlannedNumberKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Group = Table.Add("group", Required, Text, "code of the group", "\"vte\"");
    public static readonly Key<(decimal Lowest, decimal Highest)> Range = Table.Add("range", Required, Interval(NumberRange.AboveZero, allowEqual: false), "lowest and highest baseline, in the unit", "[0.50, 1.00]");
    public static readonly Key<int> Specimens = Table.Add("specimens", Required, Whole(1, 100_000), "how many of the group's specimens", "50");
    // csharpier-ignore-end

    public static PlannedNumber Read(TomlTable table)
    {
        var (lowest, highest) = table.Read(Range);
        return new(table.Read(Group), lowest, highest, table.Read(Specimens));
    }
}

/// <summary>The keys of "manufacturer_limit".</summary>
internal static class ManufacturerLimitKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<TimeSpan> Time = Table.Add("time", Required, LongDuration, "longest time from collection to test", "\"4 h\"");
    public static readonly Key<string> Document = Table.Add("document", Required, Text, "the document", "\"instructions for use, revision 3\"");
    // csharpier-ignore-end
}

/// <summary>The keys of "cv_percent".</summary>
internal static class CvPercentKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<decimal> BetweenRun = Table.Add("between_run", Required, Number(NumberRange.AboveZero), "between-run coefficient of variation, percent", "2.5");
    // csharpier-ignore-end
}

using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys of an exclusion.</summary>
internal static class ExclusionKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Specimen = Table.Add("specimen", Required, Text, "specimen code", "\"N-017\"");
    public static readonly Key<string?> Analyte = Table.Add("analyte", Optional, OptionalText, "analyte; all when not given", "\"aPTT\"");
    public static readonly Key<TimeSpan?> TimePoint = Table.Add("time_point", Optional, Duration.OrNone(), "time point; all when not given", "\"6 h\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "why", "\"stored in the refrigerator\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the decision", "\"2026-03-06\"");
    public static readonly Key<TimeOnly?> Time = Table.Add("time", Optional, TimeOfDay.OrNone(), "time of the decision on that day: shows that it came before the result", "\"11:20\"");
    // csharpier-ignore-end
}

/// <summary>The keys of a tube that was not drawn.</summary>
internal static class NotDrawnKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Specimen = Table.Add("specimen", Required, Text, "specimen code", "\"N-017\"");
    public static readonly Key<TimeSpan> TimePoint = Table.Add("time_point", Required, Duration, "time point of the tube", "\"12 h\"");
    public static readonly Key<string?> Storage = Table.Add("storage", Optional, OptionalText, "storage in which the tube would have waited; all of the specimen when not given", "\"wb-rt\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "why", "\"vein collapsed\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day on which it was stated, at the latest that of collection", "\"2026-03-06\"");
    // csharpier-ignore-end
}

/// <summary>The keys of "ended_early".</summary>
internal static class EndedEarlyKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "why", "\"study nurse left\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the decision, the last on which a specimen may have been collected", "\"2026-03-20\"");
    // csharpier-ignore-end
}

/// <summary>The keys of a deviation.</summary>
internal static class DeviationKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> What = Table.Add("text", Required, Text, "what happened", "\"One tube was filled short.\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day", "\"2026-03-06\"");
    // csharpier-ignore-end
}

/// <summary>The keys of a rerun.</summary>
internal static class RerunKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Specimen = Table.Add("specimen", Required, Text, "specimen code", "\"N-017\"");
    public static readonly Key<string> Analyte = Table.Add("analyte", Required, Text, "analyte", "\"aPTT\"");
    public static readonly Key<TimeSpan?> TimePoint = Table.Add("time_point", Optional, Duration.OrNone(), "time point; the baseline when not given", "\"6 h\"");
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "one of the protocol's rerun_reasons", "\"instrument error\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the decision", "\"2026-03-06\"");
    // csharpier-ignore-end
}

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

/// <summary>The keys of "codes_declared".</summary>
internal static class DeclaredCodesKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "where the codes come from, and why they lead to nobody", "\"labels printed for this study; no list links them\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person who declares it", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day", "\"2026-03-02\"");
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

/// <summary>The keys of a transcription check.</summary>
internal static class TranscriptionCheckKeys
{
    private const int MostSeeds = 1_000_000_000;
    private const int MostRows = 100_000;

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<int> Seed = Table.Add("seed", Required, Whole(0, MostSeeds), "seed by which the rows were drawn, as the sheet states it", "20260306");
    public static readonly Key<int> Rows = Table.Add("rows", Required, Whole(1, MostRows), "how many rows were compared", "20");
    public static readonly Key<int> Differences = Table.Add("differences", Required, Whole(0, MostRows), "in how many of them a result, time or code was not that of the printout", "0");
    public static readonly Key<string?> Outcome = Table.Add("outcome", Depends, OptionalText, "what became of the differences; needed where there is one", "\"N-017 corrected, all rows of that day compared\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the comparison", "\"2026-03-06\"");
    // csharpier-ignore-end
}

/// <summary>The keys of an answer to a data query.</summary>
internal static class AnswerKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Query = Table.Add("query", Required, Text.When("eight signs, 0 to 9 and a to f", IsReference), "the reference that check shows beside the query: it changes with what the query says, which so opens again", "\"3f2a91bc\"");
    public static readonly Key<string> Answer = Table.Add("text", Required, Text, "the answer", "\"Collector asked: a plain tube was drawn first.\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the answer", "\"2026-03-06\"");
    // csharpier-ignore-end

    private static bool IsReference(TomlTable table, Key key, string reference) =>
        QueryReference.IsReference(reference)
        || table.Refuse(
            key,
            FileQueries.UnknownWord,
            reference,
            $"\"{reference}\" is not the reference of a data query.",
            "Copy the eight signs that check shows beside the query."
        );
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

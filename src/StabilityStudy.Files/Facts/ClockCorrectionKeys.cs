using StabilityStudy.Core.Study;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys of a correction of a clock.</summary>
internal static class ClockCorrectionKeys
{
    // A day: the clock of an analyzer may have a wrong date.
    private const int MostMinutes = 24 * 60;

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<ImmutableArray<string>> Runs = Table.Add("runs", Depends, Texts, "runs whose tested_at is corrected, with that of their controls; runs or days are needed", "[\"2026-03-29-BL\"]");
    public static readonly Key<ImmutableArray<DateOnly>> Days = Table.Add("days", Depends, ListOf(Date, "dates"), "days by that clock whose tested_at is corrected, where results name no run", "[\"2026-03-29\"]");
    public static readonly Key<string?> Instrument = Table.Add("instrument", Optional, OptionalText, "the instrument, where others were right", "\"AN1\"");
    public static readonly Key<int> Minutes = Table.Add("minutes", Required, Whole(-MostMinutes, MostMinutes).When("not 0", IsChange), "minutes that are added to each time; with - they are taken off", "60");
    public static readonly Key<string> Reason = Table.Add("reason", Required, Text, "how it is known that the clock was wrong", "\"clock of AN1 compared with that of the laboratory on 2026-03-30, one hour behind\"");
    public static readonly Key<string> By = Table.Add("by", Required, Text, "code of the person", "\"LS1\"");
    public static readonly Key<DateOnly> On = Table.Add("on", Required, Date, "day of the decision", "\"2026-03-30\"");
    // csharpier-ignore-end

    public static ClockCorrection Read(TomlTable table)
    {
        var (runs, days) = (table.Read(Runs), table.Read(Days));
        return new(
            runs.IsDefault ? [] : runs,
            days.IsDefault ? [] : days,
            table.Read(Instrument),
            table.Read(Minutes),
            table.Read(Reason),
            table.Read(By),
            table.Read(On),
            table.Line ?? 1
        );
    }

    private static bool IsChange(TomlTable table, Key key, int minutes) =>
        minutes != 0
        || table.Refuse(
            key,
            FileQueries.OutOfRange,
            "0",
            "A correction by 0 minutes corrects nothing.",
            "Write the minutes, or remove the correction."
        );
}

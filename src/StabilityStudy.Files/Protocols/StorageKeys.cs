using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of a storage.</summary>
internal static class StorageKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in specimens.csv", "\"wb-rt\"");
    public static readonly Key<StorageState> State = Table.Add("state", Required, Word(FileWords.States), "in what state the tube waits", "\"whole blood\"");
    public static readonly Key<Cap> Cap = Table.Add("cap", Required, Word(FileWords.Caps), "whether the tube waits with its cap on", "\"closed\"");
    public static readonly Key<(decimal Lowest, decimal Highest)> Celsius = Table.Add("celsius", Required, Interval(NumberRange.Celsius, allowEqual: true), "lowest and highest temperature, °C", "[18, 25]");
    public static readonly Key<TimeSpan?> SpinToTest = Table.Add("spin_to_test", Depends, Duration.OrNone(), "longest time from spinning to the test; required for whole blood", "\"1 h\"");
    public static readonly Key<TimeSpan?> SpinTakes = Table.Add("spin_takes", Optional, LongDuration.OrNone(), "time that the bench needs from the spin to the test, for \"spin by\" on a bench card; nothing is concluded from it", "\"30 min\"");
    public static readonly Key<string?> Transport = Table.Add("transport", Optional, OptionalText, "how tubes travel while they wait, for the report; the conclusion then holds for that way alone", "\"courier in an insulated box, logger in every box\"");
    // csharpier-ignore-end
}

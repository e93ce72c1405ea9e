using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys of "level_meanings".</summary>
internal static class LevelMeaningKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<decimal> Level = Table.Add("level", Required, Number(NumberRange.Any), "one of the decision levels", "0.50");
    public static readonly Key<string?> Group = Table.Add("group", Optional, OptionalText, "code of the group for which it holds; every group without one of its own when not given", "\"ufh\"");
    public static readonly Key<string?> Below = Table.Add("below", Depends, PageOneForms.Consequence, "what can follow where waiting moves a result below the level; goes on after \"if a result falls below it, \"; this, above or both", "\"a thrombosis could be ruled out wrongly\"");
    public static readonly Key<string?> Above = Table.Add("above", Depends, PageOneForms.Consequence, "what can follow where waiting moves a result to the level or above; goes on after \"if a result rises above it, \"", "\"a patient could be sent to imaging without need\"");
    // csharpier-ignore-end
}

using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>What the instrument's flags mean.</summary>
/// <param name="Declared">The flags that study.toml declares.</param>
/// <param name="MustBeDeclared">
/// Whether a flag that is not declared is a query. In files that a report carries it counts as failed, as it did before flags were declared.
/// </param>
internal sealed record FlagSet(FrozenDictionary<string, FlagMeaning> Declared, bool MustBeDeclared)
{
    /// <summary>For files that have no flags.</summary>
    public static readonly FlagSet None = new(
        FrozenDictionary<string, FlagMeaning>.Empty,
        MustBeDeclared: false
    );

    /// <summary>What a flag means; null for one that nobody declared. The words for "no result" say by themselves that the test failed.</summary>
    public FlagMeaning? MeaningOf(string flag) =>
        flag.Length == 0 ? FlagMeaning.Failed
        : Declared.TryGetValue(flag, out var meaning) ? meaning
        : !MustBeDeclared || FileWords.MissingReasons.TryRead(flag.ToUpperInvariant(), out _)
            ? FlagMeaning.Failed
        : null;
}

using System.Collections.Frozen;

namespace StabilityStudy.Files.Layouts;

/// <summary>What study.toml says of the instrument's flags.</summary>
internal static class FlagSettings
{
    /// <summary>Reads what each flag means.</summary>
    public static FrozenDictionary<string, FlagMeaning> Read(
        TomlTable? values,
        FrozenDictionary<string, string>? words
    )
    {
        var found = new Dictionary<string, FlagMeaning>(StringComparer.Ordinal);
        foreach (var (flag, word) in words ?? FrozenDictionary<string, string>.Empty)
        {
            if (FileWords.FlagMeanings.TryRead(word, out var meaning))
            {
                found.Add(flag, meaning.Value);
                continue;
            }

            values?.Fault(
                LayoutReader.TextOf("flag"),
                FileQueries.UnknownWord,
                word,
                $"The flag \"{flag}\" is to mean \"{word}\", which is not known here.{NearestWord.Question(word, FileWords.FlagMeanings.Words)}",
                $"Write one of {FileWords.FlagMeanings.Listed}."
            );
        }

        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }
}

using System.Collections.Frozen;
using StabilityStudy.Files.Messages;

namespace StabilityStudy.Files.Layouts;

/// <summary>What study.toml says of the status of results in messages.</summary>
internal static class StatusSettings
{
    /// <summary>Reads what becomes of each status.</summary>
    public static FrozenDictionary<string, StatusMeaning> Read(TomlTable? table)
    {
        var found = new Dictionary<string, StatusMeaning>(StringComparer.Ordinal);
        foreach (var (status, word) in LayoutReader.Texts(table))
        {
            var allowed = ResultStatus.AllowedFor(status);
            if (
                FileWords.StatusMeanings.TryRead(word, out var meaning)
                && allowed.Contains(meaning.Value)
            )
            {
                found.Add(status, meaning.Value);
                continue;
            }

            var words = ResultStatus.WordsOf(status);
            table?.Fault(
                LayoutReader.TextOf(status),
                FileQueries.UnknownWord,
                word,
                $"A result with the status \"{status}\"{(words.Length > 0 ? $" ({words})" : "")} cannot be read as \"{word}\".",
                $"Write {string.Join(" or ", allowed.Select(item => $"\"{FileWords.StatusMeanings.Write(item)}\""))}."
            );
        }

        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }
}

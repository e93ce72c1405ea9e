using System.Collections.Frozen;

namespace StabilityStudy.Files.Words;

/// <summary>Tables of words, each list of words as one text with a comma and a space between them.</summary>
internal static class WordLists
{
    /// <summary>The words of a list.</summary>
    public static FrozenSet<string> Set(string words) =>
        words.Split(", ").ToFrozenSet(StringComparer.Ordinal);

    /// <summary>For each word of the lists what it means; the first list with a word has it.</summary>
    public static FrozenDictionary<string, string> Table(
        params ReadOnlySpan<(string Meaning, string Words)> lists
    )
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (meaning, words) in lists)
        {
            foreach (var word in words.Split(", "))
            {
                found.TryAdd(word, meaning);
            }
        }

        return found.ToFrozenDictionary(StringComparer.Ordinal);
    }
}

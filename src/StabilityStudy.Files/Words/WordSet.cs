using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Files.Words;

/// <summary>The words that a key or column allows, and what each means.</summary>
internal sealed class WordSet<T>(params ImmutableArray<(string Word, T Value)> entries)
    where T : struct
{
    /// <summary>The words, in the order in which they are explained.</summary>
    public ImmutableArray<string> Words { get; } = [.. entries.Select(entry => entry.Word)];

    /// <summary>The words for a message: "a", "b" or "c".</summary>
    public string Listed { get; } =
        string.Join(" | ", entries.Select(entry => $"\"{entry.Word}\""));

    /// <summary>Reads a word.</summary>
    public bool TryRead(ReadOnlySpan<char> word, [NotNullWhen(true)] out T? value)
    {
        foreach (var entry in entries)
        {
            if (word.SequenceEqual(entry.Word))
            {
                value = entry.Value;
                return true;
            }
        }

        value = null;
        return false;
    }

    /// <summary>The word of a value.</summary>
    public string Write(T value)
    {
        foreach (var (word, meaning) in entries)
        {
            if (EqualityComparer<T>.Default.Equals(meaning, value))
            {
                return word;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "No word has this value.");
    }
}

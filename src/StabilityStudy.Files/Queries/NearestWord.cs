namespace StabilityStudy.Files.Queries;

/// <summary>Finds the known word that a misspelt one was meant to be.</summary>
public static class NearestWord
{
    private const int LongestCompared = 64;

    /// <summary>The nearest candidate, or null when none is near: at most a third of the letters may differ.</summary>
    public static string? Find(string word, IEnumerable<string> candidates)
    {
        if (word.Length is 0 or > LongestCompared)
        {
            return null;
        }

        string? nearest = null;
        var least = Math.Max(1, word.Length / 3) + 1;
        foreach (var candidate in candidates)
        {
            if (candidate.Length > LongestCompared || candidate.Length == 0)
            {
                continue;
            }

            var distance = Distance(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (distance < least)
            {
                least = distance;
                nearest = candidate;
            }
        }

        return nearest;
    }

    /// <summary>" Did you mean "x"?" with a leading space, or nothing.</summary>
    public static string Question(string word, IEnumerable<string> candidates) =>
        Find(word, candidates) is { } nearest ? $" Did you mean \"{nearest}\"?" : "";

    /// <summary>
    /// Insertions, deletions, replacements and swaps of neighbors that turn one word into the other (optimal string
    /// alignment; Damerau, Communications of the ACM 7 (1964) 171–176).
    /// </summary>
    internal static int Distance(string from, string to)
    {
        var before = new int[to.Length + 1];
        var previous = new int[to.Length + 1];
        for (var j = 0; j <= to.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= from.Length; i++)
        {
            var current = new int[to.Length + 1];
            current[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var replaced = previous[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                current[j] = Math.Min(replaced, Math.Min(previous[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                {
                    current[j] = Math.Min(current[j], before[j - 2] + 1);
                }
            }

            (before, previous) = (previous, current);
        }

        return previous[to.Length];
    }
}

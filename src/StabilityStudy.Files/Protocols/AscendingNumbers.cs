using System.Collections.Immutable;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads a list of numbers from the lowest to the highest, each once.</summary>
internal static class AscendingNumbers
{
    /// <summary>The numbers; empty when the key is not given.</summary>
    /// <param name="table">The table that may hold the key.</param>
    /// <param name="key">The key.</param>
    /// <param name="what">What the numbers are: "decision levels".</param>
    public static ImmutableArray<decimal> Read(TomlTable table, string key, string what)
    {
        var numbers = table.OptionalDecimals(key, NumberRange.Any);
        if (table.IsSound(key) && numbers.Zip(numbers.Skip(1)).Any(p => p.First >= p.Second))
        {
            table.Fault(
                key,
                FileQueries.OutOfRange,
                "",
                $"The {what} are not ascending.",
                "List them from the lowest to the highest, each once."
            );
        }

        return numbers;
    }
}

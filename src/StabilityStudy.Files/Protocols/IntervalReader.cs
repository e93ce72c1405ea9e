using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads [lowest, highest].</summary>
internal static class IntervalReader
{
    /// <summary>The two numbers; placeholders when they could not be read.</summary>
    public static (decimal Lowest, decimal Highest) Read(
        TomlTable table,
        string key,
        NumberRange range,
        bool allowEqual
    )
    {
        var numbers = table.RequireDecimals(key, range);
        if (!table.IsSound(key))
        {
            return default;
        }

        if (
            numbers.Length != 2
            || numbers[0] > numbers[1]
            || (numbers[0] == numbers[1] && !allowEqual)
        )
        {
            table.Fault(
                key,
                FileQueries.OutOfRange,
                string.Join(
                    ", ",
                    numbers.Select(n =>
                        n.ToString(System.Globalization.CultureInfo.InvariantCulture)
                    )
                ),
                $"\"{key}\" needs two numbers, the lowest first.",
                "Write [lowest, highest]."
            );
            return default;
        }

        return (numbers[0], numbers[1]);
    }
}

using System.Numerics;

namespace StabilityStudy.Statistics.Regression;

/// <summary>The median found by parting values around a pivot again and again (Hoare, Commun ACM 4 (1961) 321, from memory): in time proportional to their number, where sorting takes n log n.</summary>
internal static class MiddleValue
{
    /// <summary>The median; between two middle values their mean. The values, all of them numbers, change places.</summary>
    public static double Of(Span<double> values)
    {
        var middle = values.Length / 2;
        var upper = AtRank(values, middle);
        if (values.Length % 2 == 1)
        {
            return upper;
        }

        var lower = values[0];
        foreach (var value in values[1..middle])
        {
            lower = Math.Max(lower, value);
        }

        // Halving first is exact and keeps sums of the largest doubles finite.
        return (lower / 2) + (upper / 2);
    }

    /// <summary>The value that would stand at an index if all were sorted; none before it is then above it. The values, all of them numbers, change places.</summary>
    public static T AtRank<T>(Span<T> values, int index)
        where T : struct, INumber<T>
    {
        var (from, to) = (0, values.Length - 1);
        while (from < to)
        {
            var pivot = MiddleOf(values[from], values[(from + to) / 2], values[to]);
            var (low, high) = (from, to);
            while (low <= high)
            {
                while (values[low] < pivot)
                {
                    low++;
                }

                while (values[high] > pivot)
                {
                    high--;
                }

                if (low <= high)
                {
                    (values[low], values[high]) = (values[high--], values[low++]);
                }
            }

            if (index <= high)
            {
                to = high;
            }
            else if (index >= low)
            {
                from = low;
            }
            else
            {
                break;
            }
        }

        return values[index];
    }

    private static T MiddleOf<T>(T a, T b, T c)
        where T : struct, INumber<T> => T.Max(T.Min(a, b), T.Min(T.Max(a, b), c));
}

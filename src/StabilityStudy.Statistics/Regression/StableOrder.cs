using System.Numerics;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Sorts items by keys; equal keys leave their items as they were.</summary>
internal static class StableOrder
{
    public static void Sort<T>(T[] keys, int[] items)
        where T : struct, IComparisonOperators<T, T, bool>
    {
        var (fromKeys, toKeys) = (keys, new T[keys.Length]);
        var (fromItems, toItems) = (items, new int[items.Length]);
        for (var width = 1; width < keys.Length; width *= 2)
        {
            for (var start = 0; start < keys.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, keys.Length);
                var end = Math.Min(middle + width, keys.Length);
                var (left, right) = (start, middle);
                for (var i = start; i < end; i++)
                {
                    var next =
                        left < middle && (right == end || fromKeys[left] <= fromKeys[right])
                            ? left++
                            : right++;
                    toKeys[i] = fromKeys[next];
                    toItems[i] = fromItems[next];
                }
            }

            (fromKeys, toKeys) = (toKeys, fromKeys);
            (fromItems, toItems) = (toItems, fromItems);
        }

        if (fromItems != items)
        {
            fromItems.CopyTo(items, 0);
        }
    }
}

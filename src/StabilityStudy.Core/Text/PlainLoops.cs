using System.Buffers;
using System.Runtime.CompilerServices;

namespace StabilityStudy.Core.Text;

/// <summary>Lists from lists in one plain loop: over the pairs of a large study a chain of iterators takes longer than what is done with each.</summary>
public static class PlainLoops
{
    /// <summary>How many items are wanted.</summary>
    public static int Count<T>(this ImmutableArray<T> items, Func<T, bool> wanted)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        var count = 0;
        foreach (var item in items)
        {
            count += wanted(item) ? 1 : 0;
        }

        return count;
    }

    /// <summary>What is made of each item.</summary>
    public static ImmutableArray<TResult> Map<T, TResult>(
        this ImmutableArray<T> items,
        Func<T, TResult> of
    ) => ImmutableArray.CreateRange(items, of);

    /// <summary>The items that are wanted; the same array where all are.</summary>
    public static ImmutableArray<T> Keep<T>(this ImmutableArray<T> items, Func<T, bool> wanted)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        var kept = 0;
        while (kept < items.Length && wanted(items[kept]))
        {
            kept++;
        }

        if (kept == items.Length)
        {
            return items;
        }

        var rented = ArrayPool<T>.Shared.Rent(items.Length);
        items.AsSpan(0, kept).CopyTo(rented);
        foreach (var item in items.AsSpan()[(kept + 1)..])
        {
            if (wanted(item))
            {
                rented[kept++] = item;
            }
        }

        var all = ImmutableArray.Create(rented.AsSpan(0, kept));
        ArrayPool<T>.Shared.Return(
            rented,
            clearArray: RuntimeHelpers.IsReferenceOrContainsReferences<T>()
        );
        return all;
    }
}

namespace StabilityStudy.Core.Text;

/// <summary>Lists from lists in one plain loop: over the pairs of a large study a chain of iterators takes longer than what is done with each.</summary>
internal static class PlainLoops
{
    /// <summary>What is made of each item.</summary>
    public static ImmutableArray<TResult> Map<T, TResult>(
        this ImmutableArray<T> items,
        Func<T, TResult> of
    ) => ImmutableArray.CreateRange(items, of);

    /// <summary>The items that are wanted.</summary>
    public static ImmutableArray<T> Keep<T>(this ImmutableArray<T> items, Func<T, bool> wanted)
    {
        var kept = ImmutableArray.CreateBuilder<T>(items.Length);
        foreach (var item in items)
        {
            if (wanted(item))
            {
                kept.Add(item);
            }
        }

        return kept.DrainToImmutable();
    }
}

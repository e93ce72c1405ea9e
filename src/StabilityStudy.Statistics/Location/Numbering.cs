using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Location;

/// <summary>Numbers what it is given from 0 on, in the order in which each first comes.</summary>
/// <param name="expected">About how many different items will come.</param>
public sealed class Numbering<T>(int expected = 0)
    where T : notnull
{
    private readonly Dictionary<T, int> _numbers = new(expected);

    /// <summary>How many have a number.</summary>
    public int Count => _numbers.Count;

    /// <summary>The items, in the order of their numbers.</summary>
    public ImmutableArray<T> Items =>
        [.. _numbers.OrderBy(item => item.Value).Select(item => item.Key)];

    /// <summary>Whether an item has a number.</summary>
    /// <param name="item">The item.</param>
    /// <param name="number">Its number.</param>
    public bool TryGet(T item, out int number) => _numbers.TryGetValue(item, out number);

    /// <summary>The number of an item, the next one for an item that is new.</summary>
    public int Of(T item)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(
            _numbers,
            item,
            out var isKnown
        );
        if (!isKnown)
        {
            number = _numbers.Count - 1;
        }

        return number;
    }
}

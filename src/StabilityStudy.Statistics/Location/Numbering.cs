using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Location;

/// <summary>Numbers what it is given from 0 on, in the order in which each first comes.</summary>
public sealed class Numbering<T>
    where T : notnull
{
    private readonly Dictionary<T, int> _numbers = [];

    /// <summary>How many have a number.</summary>
    public int Count => _numbers.Count;

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

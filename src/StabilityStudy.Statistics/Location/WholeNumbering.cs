namespace StabilityStudy.Statistics.Location;

/// <summary>Numbers whole numbers as <see cref="Numbering{T}"/> does, by a table where it is known below which they lie.</summary>
/// <param name="below">What all of them lie below; none is negative.</param>
public sealed class WholeNumbering(int below)
{
    // One more than the number, so that 0 means none yet.
    private readonly int[] _numbers = new int[below];

    /// <summary>How many have a number.</summary>
    public int Count { get; private set; }

    /// <summary>The number of an item, the next one for an item that is new.</summary>
    public int Of(int item)
    {
        ref var number = ref _numbers[item];
        number = number == 0 ? ++Count : number;
        return number - 1;
    }
}

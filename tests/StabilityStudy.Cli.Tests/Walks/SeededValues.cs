namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>Invented numbers: every specimen, tube and run draws from a stream of its own, named after it, so that one number more in one place leaves all others as they were.</summary>
internal sealed class SeededValues
{
    private readonly Random _random;

    private SeededValues(int seed) => _random = new Random(seed);

    /// <summary>The stream of a name: the seed with the 32-bit FNV-1a hash of the name.</summary>
    public static SeededValues Of(int seed, string name)
    {
        var hash = 2166136261u;
        foreach (var letter in name)
        {
            hash = unchecked((hash ^ letter) * 16777619u);
        }

        return new(unchecked((int)hash + seed));
    }

    /// <summary>A number from the lowest to the highest.</summary>
    public double Between(double lowest, double highest) =>
        lowest + ((highest - lowest) * _random.NextDouble());

    /// <summary>A number of minutes from the least to the most, both possible.</summary>
    public TimeSpan Minutes(double least, double most) =>
        TimeSpan.FromMinutes(Math.Round(Between(least, most)));

    /// <summary>A normal deviate (Box and Muller 1958), mean 0 and SD 1.</summary>
    public double Normal() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()))
        * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>The same items in another order (Fisher and Yates).</summary>
    public T[] Shuffled<T>(IEnumerable<T> items)
    {
        var shuffled = items.ToArray();
        _random.Shuffle(shuffled);
        return shuffled;
    }
}

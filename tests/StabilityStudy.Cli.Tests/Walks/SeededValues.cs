using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>Invented numbers: every specimen, tube and run draws from a stream of its own, named after it, so that one number more in one place leaves all others as they were.</summary>
/// <remarks>The generator mixes every bit of its seed: with the one of the run-time library, streams of names that differ in a digit had errors that went together, and ten runs averaged too well.</remarks>
internal sealed class SeededValues
{
    private readonly SeededRandom _random;

    private SeededValues(ulong seed) => _random = new SeededRandom(seed);

    /// <summary>The stream of a name: the seed beside the 64-bit FNV-1a hash of the name.</summary>
    public static SeededValues Of(int seed, string name)
    {
        var hash = 14695981039346656037UL;
        foreach (var letter in name)
        {
            hash = unchecked((hash ^ letter) * 1099511628211UL);
        }

        // Two steps through the generator, so that neither near seeds nor near names give near streams.
        var mixed =
            new SeededRandom(hash).NextUInt64() ^ new SeededRandom((ulong)seed).NextUInt64();
        return new(mixed);
    }

    /// <summary>A number from the lowest to the highest.</summary>
    public double Between(double lowest, double highest) =>
        lowest + ((highest - lowest) * _random.NextDouble());

    /// <summary>A number of minutes from the least to the most, both possible.</summary>
    public TimeSpan Minutes(double least, double most) =>
        TimeSpan.FromMinutes(Math.Round(Between(least, most)));

    /// <summary>A normal deviate (Box and Muller 1958), mean 0 and SD 1.</summary>
    public double Normal() =>
        Math.Sqrt(-2 * Math.Log(_random.NextDouble()))
        * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>The same items in another order.</summary>
    public T[] Shuffled<T>(IEnumerable<T> items) =>
        [
            .. items
                .Select(item => (Item: item, Place: _random.NextUInt64()))
                .OrderBy(pair => pair.Place)
                .Select(pair => pair.Item),
        ];
}

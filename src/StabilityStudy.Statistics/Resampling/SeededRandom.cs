namespace StabilityStudy.Statistics.Resampling;

/// <summary>
/// A random sequence that its seed fixes for good: the same on every platform and in every version. It holds a
/// position, so one sequence serves one thread; give each task its own seed.
/// </summary>
/// <remarks>
/// SplitMix64: Steele, Lea and Flood (2014), "Fast splittable pseudorandom number generators", OOPSLA, figure 16 (cited from memory). Period 2⁶⁴.
/// Not for secrets.
/// </remarks>
public sealed class SeededRandom(ulong seed)
{
    private const ulong Increment = 0x9E3779B97F4A7C15;

    private ulong _state = seed;

    /// <summary>A seed for each of many tasks, so that their results do not depend on the number of threads.</summary>
    internal static ulong[] Seeds(ulong seed, int count)
    {
        var master = new SeededRandom(seed);
        var seeds = new ulong[count];
        for (var i = 0; i < count; i++)
        {
            seeds[i] = master.NextUInt64();
        }

        return seeds;
    }

    /// <summary>The next 64 bits, each value equally likely.</summary>
    public ulong NextUInt64()
    {
        unchecked
        {
            _state += Increment;
            var mixed = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }

    /// <summary>The next number strictly between 0 and 1, uniformly distributed on the middles of 2⁵² equal steps.</summary>
    public double NextDouble() => ((NextUInt64() >> 12) + 0.5) / (1L << 52);

    /// <summary>The next standard normal number, the normal quantile of <see cref="NextDouble"/>.</summary>
    public double NextNormal() => Normal.Quantile(NextDouble());
}

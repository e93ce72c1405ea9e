namespace ExampleStudies.Generator;

/// <summary>
/// SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators"). Written out here because the
/// example files must come out the same on every platform and under every later version of .NET.
/// </summary>
/// <remarks>
/// Every patient, tube and run draws from a stream of its own, named after it. So changing one part of the scenario leaves
/// the random numbers of all the others as they were.
/// </remarks>
internal sealed class SeededRandom
{
    private ulong _state;

    private SeededRandom(ulong state) => _state = state;

    /// <summary>The stream of this name: the study's seed combined with the 64-bit FNV-1a hash of the name.</summary>
    public static SeededRandom For(string name)
    {
        var hash = 14695981039346656037UL;
        foreach (var letter in name)
        {
            hash = unchecked((hash ^ letter) * 1099511628211UL);
        }

        return new SeededRandom(unchecked(hash + Scenario.Seed));
    }

    /// <summary>A number from 0 (inclusive) to 1 (exclusive), in steps of 2⁻⁵³.</summary>
    public double Uniform() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number from <paramref name="lowest"/> to <paramref name="highest"/>.</summary>
    public double Uniform(double lowest, double highest) =>
        lowest + ((highest - lowest) * Uniform());

    /// <summary>A whole number from <paramref name="lowest"/> to <paramref name="highest"/>, both possible.</summary>
    public int Whole(int lowest, int highest) => lowest + (int)(Uniform() * (highest - lowest + 1));

    /// <summary>
    /// An almost normal deviate, mean 0 and standard deviation 1: twelve uniform numbers added up, less six. It needs only
    /// additions, hence gives the same bits everywhere, and never strays beyond ±6.
    /// </summary>
    public double Normal()
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++)
        {
            sum += Uniform();
        }

        return sum;
    }

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}

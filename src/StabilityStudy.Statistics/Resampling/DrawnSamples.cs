using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Resampling;

/// <summary>Samples of pairs drawn with replacement, as many pairs as there are.</summary>
/// <remarks>Each sample has a seed of its own, so that the result does not depend on the number of threads. One that gives no line is drawn again.</remarks>
internal static class DrawnSamples
{
    /// <summary>Fewer samples say too little about the ends of a 95 % interval.</summary>
    private const int Fewest = 200;

    private const int Most = 1_000_000;

    /// <summary>Usual data need none or one; data that need more have no bootstrap distribution of a slope.</summary>
    private const int MostRedrawsOfOne = 20;

    /// <exception cref="ArgumentException">There are not from 200 to a million samples.</exception>
    public static void RequireNumber(int samples, string parameter)
    {
        if (samples is < Fewest or > Most)
        {
            throw new ArgumentException("There are from 200 to a million draws.", parameter);
        }
    }

    /// <summary>The line of each sample, with how often it was drawn again; null when samples keep giving none.</summary>
    /// <param name="pairs">Number of pairs.</param>
    /// <param name="samples">Number of samples.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="line">The line of a sample, given as numbers of pairs; called on several threads.</param>
    public static (Line? Line, int Redrawn)[] Lines(
        int pairs,
        int samples,
        ulong seed,
        Func<int[], Line?> line
    )
    {
        var seeds = SeededRandom.Seeds(seed, samples);
        var drawn = new (Line? Line, int Redrawn)[samples];
        Parallel.For(
            0,
            samples,
            () => new int[pairs],
            (i, _, sample) =>
            {
                drawn[i] = DrawOne(sample, new SeededRandom(seeds[i]), line);
                return sample;
            },
            _ => { }
        );
        return drawn;
    }

    private static (Line? Line, int Redrawn) DrawOne(
        int[] sample,
        SeededRandom random,
        Func<int[], Line?> line
    )
    {
        for (var redrawn = 0; redrawn <= MostRedrawsOfOne; redrawn++)
        {
            for (var i = 0; i < sample.Length; i++)
            {
                sample[i] = (int)(random.NextDouble() * sample.Length);
            }

            if (line(sample) is { } found)
            {
                return (found, redrawn);
            }
        }

        return (null, MostRedrawsOfOne);
    }
}

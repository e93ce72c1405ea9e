using System.Numerics;
using StabilityStudy.Statistics.Proportions;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Planning;

/// <summary>How many studies are simulated: as few as suffice, at most so many.</summary>
/// <param name="Most">Most studies, from 1 to a million.</param>
/// <param name="Tolerance">Half the width of its exact interval below which a rate is certain enough; 0 where all studies are wanted.</param>
public sealed record StudyNumber(int Most, double Tolerance);

/// <summary>Draws one study and says which of up to 64 events happened in it, a bit each. It is called on several threads.</summary>
/// <param name="random">The only source of chance.</param>
public delegate ulong SimulatedEvents(SeededRandom random);

/// <summary>Rates of several events in the same simulated studies, in stages: a rate near 0 or 1 is known well from few studies.</summary>
/// <remarks>
/// The first stage has <see cref="FirstStage"/> studies; each further one doubles their number, until the exact interval (Clopper and Pearson 1934, Biometrika 26:404–413, from memory) of the first
/// event is narrow enough or the most are drawn. Every study has a seed of its own and stages end at fixed numbers: rates do not depend on the number of threads. That the number of studies depends on
/// the rate found shifts a rate by less than the tolerance.
/// </remarks>
public static class StagedSimulation
{
    /// <summary>Studies of the first stage.</summary>
    public const int FirstStage = 250;

    private const int MostStudies = 1_000_000;

    /// <summary>The rates of some events, in the order of their bits.</summary>
    /// <param name="truth">What is true in these studies, in the unit of the caller.</param>
    /// <param name="events">How many events, from 1 to 64; the first decides how many studies are drawn.</param>
    /// <param name="number">How many studies.</param>
    /// <param name="seed">Any number; to be printed with the rates.</param>
    /// <param name="confidenceLevel">Two-sided level of the interval of a rate, between 0 and 1.</param>
    /// <param name="draw">Draws a study.</param>
    /// <exception cref="ArgumentNullException">There is no number, or nothing is drawn.</exception>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ImmutableArray<CharacteristicPoint> Rates(
        double truth,
        int events,
        StudyNumber number,
        ulong seed,
        double confidenceLevel,
        SimulatedEvents draw
    )
    {
        ArgumentNullException.ThrowIfNull(number);
        ArgumentNullException.ThrowIfNull(draw);
        Require.Number(truth, nameof(truth));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (events is < 1 or > 64)
        {
            throw new ArgumentException("There are from 1 to 64 events.", nameof(events));
        }

        if (number.Most is < 1 or > MostStudies || !(number.Tolerance >= 0))
        {
            throw new ArgumentException(
                "There are from 1 to a million studies, and a tolerance is not below zero.",
                nameof(number)
            );
        }

        var seeds = SeededRandom.Seeds(seed, number.Most);
        var counts = new int[events];
        var drawn = 0;
        do
        {
            var until = Math.Min(number.Most, drawn == 0 ? FirstStage : 2 * drawn);
            AddStage(seeds.AsSpan()[drawn..until].ToArray(), counts, draw);
            drawn = until;
        } while (
            drawn < number.Most
            && Point(truth, counts[0], drawn, confidenceLevel) is var first
            && first.Upper - first.Lower > 2 * number.Tolerance
        );

        return [.. counts.Select(count => Point(truth, count, drawn, confidenceLevel))];
    }

    private static void AddStage(ulong[] seeds, int[] counts, SimulatedEvents draw)
    {
        var happened = new ulong[seeds.Length];
        Parallel.For(0, seeds.Length, i => happened[i] = draw(new SeededRandom(seeds[i])));
        foreach (var study in happened)
        {
            for (var rest = study; rest != 0; rest &= rest - 1)
            {
                counts[BitOperations.TrailingZeroCount(rest)]++;
            }
        }
    }

    private static CharacteristicPoint Point(
        double truth,
        int count,
        int studies,
        double confidenceLevel
    )
    {
        var bounds = ClopperPearson.Bounds(count, studies, confidenceLevel);
        return new(
            truth,
            count,
            studies,
            (double)count / studies,
            bounds.TwoSidedLower,
            bounds.TwoSidedUpper,
            confidenceLevel
        );
    }
}

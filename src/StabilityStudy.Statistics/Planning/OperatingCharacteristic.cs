using StabilityStudy.Statistics.Proportions;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Planning;

/// <summary>How often studies are accepted when one thing is true.</summary>
/// <param name="Truth">What is true, in the unit of the caller.</param>
/// <param name="Accepted">Number of simulated studies that were accepted.</param>
/// <param name="Studies">Number of simulated studies.</param>
/// <param name="Probability">Accepted ÷ studies.</param>
/// <param name="Lower">Lower end of the exact interval of the probability.</param>
/// <param name="Upper">Upper end of the exact interval of the probability.</param>
/// <param name="ConfidenceLevel">Two-sided level of that interval.</param>
public sealed record CharacteristicPoint(
    double Truth,
    int Accepted,
    int Studies,
    double Probability,
    double Lower,
    double Upper,
    double ConfidenceLevel
);

/// <summary>Draws one study in which a thing is true and tells whether it is accepted. It is called on several threads.</summary>
/// <param name="truth">What is true.</param>
/// <param name="random">The only source of chance.</param>
public delegate bool SimulatedStudy(double truth, SeededRandom random);

/// <summary>The operating characteristic of a rule: the probability of acceptance over what may be true, by simulation.</summary>
/// <remarks>
/// For rules of several parts there is no closed form; of single parts <see cref="EquivalencePower"/> and <see cref="IndividualPower"/> are exact. The studies of every point start from
/// the same seeds, so that points differ by their truth and hardly by chance, and a curve is smooth; points are then correlated. Each study has a seed of its own: the curve does not depend on the number of threads.
/// Interval of a point: Clopper and Pearson (1934), Biometrika 26:404–413; the term: Neyman and Pearson, and MIL-STD-105 (both from memory).
/// </remarks>
public static class OperatingCharacteristic
{
    private const int MostStudies = 1_000_000;

    /// <summary>One point a truth, in the order given.</summary>
    /// <param name="truths">What may be true, finite numbers.</param>
    /// <param name="studies">Studies a point, from 1 to a million: the standard error of a probability is at most 0.5/√studies.</param>
    /// <param name="seed">Any number; to be printed with the curve.</param>
    /// <param name="confidenceLevel">Two-sided level of the interval of a point, between 0 and 1.</param>
    /// <param name="accepts">Draws a study and judges it.</param>
    /// <exception cref="ArgumentNullException">There is no simulated study.</exception>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ImmutableArray<CharacteristicPoint> Curve(
        ReadOnlySpan<double> truths,
        int studies,
        ulong seed,
        double confidenceLevel,
        SimulatedStudy accepts
    )
    {
        ArgumentNullException.ThrowIfNull(accepts);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (studies is < 1 or > MostStudies)
        {
            throw new ArgumentException("There are from 1 to a million studies.", nameof(studies));
        }

        var seeds = SeededRandom.Seeds(seed, studies);
        var points = ImmutableArray.CreateBuilder<CharacteristicPoint>(truths.Length);
        foreach (var truth in truths)
        {
            Require.Number(truth, nameof(truths));
            points.Add(Point(truth, seeds, confidenceLevel, accepts));
        }

        return points.MoveToImmutable();
    }

    private static CharacteristicPoint Point(
        double truth,
        ulong[] seeds,
        double confidenceLevel,
        SimulatedStudy accepts
    )
    {
        var accepted = 0;
        Parallel.For(
            0,
            seeds.Length,
            () => 0,
            (i, _, sum) => sum + (accepts(truth, new SeededRandom(seeds[i])) ? 1 : 0),
            sum => Interlocked.Add(ref accepted, sum)
        );
        var bounds = ClopperPearson.Bounds(accepted, seeds.Length, confidenceLevel);
        return new CharacteristicPoint(
            truth,
            accepted,
            seeds.Length,
            (double)accepted / seeds.Length,
            bounds.TwoSidedLower,
            bounds.TwoSidedUpper,
            confidenceLevel
        );
    }
}

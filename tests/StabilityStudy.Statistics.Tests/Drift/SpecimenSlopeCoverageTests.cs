using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Statistics.Tests.Drift;

public class SpecimenSlopeCoverageTests
{
    private const int Repeats = 4000;

    /// <summary>Four binomial standard errors of a share of 0.05 in 4,000 repeats.</summary>
    private const double Margin = 0.014;

    [Fact]
    public void Upper_bound_lies_below_the_true_drift_about_five_times_in_a_hundred()
    {
        const double truth = 0.1;
        var random = new Random(20240613);
        var missed = 0;
        for (var repeat = 0; repeat < Repeats; repeat++)
        {
            var series = Enumerable.Range(0, 15).Select(i => Series(i, truth, random));
            var drift = SpecimenSlopes.Fit([.. series], [], DriftShape.Linear, 0.95).Value!;
            missed += drift.MeanSlope.Upper < truth ? 1 : 0;
        }

        Assert.InRange((double)missed / Repeats, 0.05 - Margin, 0.05 + Margin);
    }

    /// <summary>Own slope, jittered delays, and an error of the baseline that all changes of the specimen share.</summary>
    private static SpecimenSeries Series(int specimen, double truth, Random random)
    {
        var slope = truth + (0.04 * Noise(random));
        var shared = Noise(random);
        var baseline = 1 + random.NextDouble();
        double[] delays = [4 + random.NextDouble(), 8 + random.NextDouble(), 24, 48];
        var changes = delays.Select(t => (slope * (t - baseline)) + shared + Noise(random));
        return new SpecimenSeries(specimen, baseline, [.. delays], [.. changes]);
    }

    private static double Noise(Random random) =>
        Normal.Quantile(Math.Max(random.NextDouble(), 1e-12));
}

using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Tests.Regression;

[Trait("lane", "slow")]
public class DemingCoverageTests
{
    private const int Repeats = 3000;

    /// <summary>Four binomial standard errors of a share of 0.05 in 3,000 repeats.</summary>
    private const double Margin = 0.016;

    [Fact]
    public void Jackknife_interval_of_the_slope_misses_the_truth_about_five_times_in_a_hundred()
    {
        var random = new Random(20240612);
        var missed = 0;
        for (var repeat = 0; repeat < Repeats; repeat++)
        {
            var x = new double[40];
            var y = new double[40];
            for (var i = 0; i < x.Length; i++)
            {
                var truth = 20 + (40 * random.NextDouble());
                x[i] = truth + Noise(random);
                y[i] = truth + (2 * Noise(random));
            }

            var slope = DemingRegression.Fit(x, y, 0.25, 0.95).Value!.Slope;
            missed += slope.Lower > 1 || slope.Upper < 1 ? 1 : 0;
        }

        Assert.InRange((double)missed / Repeats, 0.05 - Margin, 0.05 + Margin);
    }

    private static double Noise(Random random) =>
        Normal.Quantile(Math.Max(random.NextDouble(), 1e-12));
}

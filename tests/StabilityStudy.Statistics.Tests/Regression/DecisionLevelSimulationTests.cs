using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>
/// How often the bias at the upper edge of a narrow group is claimed to be below its true value, when the allowance ends exactly there: the interval of 90 % must do so about five
/// times in a hundred.
/// </summary>
public sealed class DecisionLevelSimulationTests
{
    private const int Studies = 1500;

    /// <summary>Four binomial standard errors of 0.05 in 1,500 studies, and 0.01 since the jackknife interval is approximate at 40 pairs.</summary>
    private const double Margin = 0.033;

    [Fact]
    public void Weighted_deming_with_the_right_ratio_claims_falsely_about_five_times_in_a_hundred() =>
        Assert.InRange(FalseClaims(WeightedBelow), 0.05 - Margin, 0.05 + Margin);

    [Fact]
    public void Ordinary_least_squares_claims_falsely_far_more_often() =>
        Assert.InRange(FalseClaims(OrdinaryBelow), 0.12, 0.4);

    /// <summary>Levels around 30 with an SD of 8 %, the edge two SDs up; errors of 3 % in x, √2 times that in y (the specimen's own change adds to it): ratio 0.5.</summary>
    private static double FalseClaims(Func<double[], double[], double, double, bool> claimsBelow)
    {
        var random = new SeededRandom(20240816);
        var falseClaims = 0;
        var x = new double[40];
        var y = new double[40];
        for (var study = 0; study < Studies; study++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var truth = 30 * (1 + (0.08 * random.NextNormal()));
                x[i] = truth * (1 + (0.03 * random.NextNormal()));
                y[i] = 1.05 * truth * (1 + (0.03 * Math.Sqrt(2) * random.NextNormal()));
            }

            const double edge = 34.8;
            falseClaims += claimsBelow(x, y, edge, 0.05 * edge) ? 1 : 0;
        }

        return (double)falseClaims / Studies;
    }

    private static bool WeightedBelow(double[] x, double[] y, double level, double bias) =>
        WeightedDemingRegression.BiasAt(x, y, 0.5, level, 0.9, []).Value?.Upper < bias;

    /// <summary>The fitted line's own prediction, with the standard error at the level from the pairs' spread.</summary>
    private static bool OrdinaryBelow(double[] x, double[] y, double level, double bias)
    {
        var fit = OrdinaryLeastSquares.Fit(x, y, 0.9).Value!;
        var mean = x.Average();
        var spread = x.Sum(v => (v - mean) * (v - mean));
        var error =
            fit.ResidualStandardDeviation
            * Math.Sqrt((1.0 / x.Length) + ((level - mean) * (level - mean) / spread));
        var t = (fit.Slope.Upper - fit.Slope.Value) / fit.Slope.StandardError;
        return fit.Intercept.Value + ((fit.Slope.Value - 1) * level) + (t * error) < bias;
    }
}

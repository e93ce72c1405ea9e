using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class ToleranceFactorTests
{
    [Fact]
    public void Published_factors_are_found()
    {
        var table = ReferenceTable.Read("published/tolerance_factors_normal.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var n = table.Whole(row, "n");
            var coverage = table.Number(row, "coverage");
            var level = table.Number(row, "confidence");

            Close.Absolute(
                table.Number(row, "k2_exact"),
                ToleranceFactor.TwoSided(n, coverage, level),
                6e-7
            );
            Close.Absolute(
                table.Number(row, "k2_howe"),
                ToleranceFactor.Howe(n, coverage, level),
                6e-7
            );
            Close.Absolute(
                table.Number(row, "k1_one_sided"),
                ToleranceFactor.OneSided(n, coverage, level),
                6e-7
            );
        }
    }

    [Fact]
    public void Factor_of_two_values_is_the_classical_one() =>
        // 95 %/95 %, n = 2: 36.519 or 36.520 in printed tables (from memory).
        Close.Absolute(36.5195, ToleranceFactor.TwoSided(2, 0.95, 0.95), 0.001);

    [Theory]
    [InlineData(5, 0.9, 0.05)]
    [InlineData(10, 0.95, 0.3)]
    [InlineData(30, 0.99, 0.5)]
    public void Low_confidence_has_factors_too(int n, double coverage, double level)
    {
        // Howe's factor by the chi-squared quantile that its definition has: P(χ² > c) = level at c.
        var howe = ToleranceFactor.Howe(n, coverage, level);
        var ratio = Normal.Quantile((1 + coverage) / 2) / howe;
        var chiSquared = (n - 1) * (1 + (1.0 / n)) * ratio * ratio;

        Close.Absolute(
            level,
            MathNet.Numerics.Distributions.ChiSquared.CDF(n - 1, double.MaxValue)
                - MathNet.Numerics.Distributions.ChiSquared.CDF(n - 1, chiSquared),
            1e-9
        );
        Close.Relative(howe, ToleranceFactor.TwoSided(n, coverage, level), 0.1);
    }

    [Fact]
    public void Factor_falls_toward_the_normal_quantile_with_the_number_of_values()
    {
        double[] factors =
        [
            .. ((int[])[2, 5, 20, 100, 1000, 10_000]).Select(n =>
                ToleranceFactor.TwoSided(n, 0.9, 0.95)
            ),
        ];

        Assert.Equal(factors.OrderDescending(), factors);
        Assert.InRange(factors[^1], Normal.Quantile(0.95), 1.02 * Normal.Quantile(0.95));
        Close.Relative(ToleranceFactor.Howe(10_000, 0.9, 0.95), factors[^1], 1e-5);
    }

    [Fact]
    public void Interval_holds_the_share_as_often_as_stated()
    {
        const int samples = 4000;
        var random = new SeededRandom(20240815);
        var factor = ToleranceFactor.TwoSided(12, 0.9, 0.9);
        var held = 0;
        var values = new double[12];
        for (var sample = 0; sample < samples; sample++)
        {
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = random.NextNormal();
            }

            var mean = Computed.Value(ArithmeticMean.WithInterval(values, 0.95));
            var reach = factor * mean.StandardDeviation;
            held += Normal.Cdf(mean.Mean + reach) - Normal.Cdf(mean.Mean - reach) >= 0.9 ? 1 : 0;
        }

        // Four binomial standard errors.
        Close.Absolute(0.9, (double)held / samples, 0.019);
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("n", () => ToleranceFactor.TwoSided(1, 0.9, 0.95));
        Assert.Throws<ArgumentException>("n", () => ToleranceFactor.Howe(10_001, 0.9, 0.95));
        Assert.Throws<ArgumentException>("coverage", () => ToleranceFactor.OneSided(5, 1, 0.95));
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => ToleranceFactor.TwoSided(5, 0.9, 0)
        );
    }
}

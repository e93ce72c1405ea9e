using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class EquivalencePowerTests
{
    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/equivalence_power.csv");
        for (var row = 0; row < table.Count; row++)
        {
            Close.Absolute(
                table.Number(row, "power"),
                EquivalencePower.Of(
                    table.Whole(row, "n"),
                    table.Number(row, "change"),
                    table.Number(row, "sd"),
                    table.Number(row, "lower"),
                    table.Number(row, "upper"),
                    table.Number(row, "level")
                ),
                1e-10
            );
        }
    }

    [Fact]
    public void Crossover_sample_sizes_of_the_published_type_are_found()
    {
        // Two-period crossover: logarithms, limits 0.80 to 1.25, SE = σ·√(2/n), n − 2 degrees of freedom, n even.
        var table = ReferenceTable.Read("published/tost_sample_size_2x2.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var cv = table.Number(row, "cv");
            var n = table.Whole(row, "n_total");
            var target = table.Number(row, "target_power");
            double PowerAt(int total) =>
                EquivalencePower.OfStandardError(
                    Math.Sqrt(Math.Log(1 + (cv * cv)) * 2 / total),
                    total - 2,
                    Math.Log(table.Number(row, "theta0")),
                    Math.Log(0.8),
                    Math.Log(1.25),
                    0.9
                );

            Assert.True(PowerAt(n) >= target);
            Assert.True(PowerAt(n - 2) < target);
        }
    }

    [Theory]
    [InlineData(20, 6, 3, 7.5)]
    [InlineData(5, 6, 3, 7.5)]
    [InlineData(20, -5, 5, 10)]
    public void Power_follows_a_simulation_of_the_rule(
        int n,
        double change,
        double deviation,
        double limit
    )
    {
        var exact = EquivalencePower.Of(n, change, deviation, -limit, limit, 0.9);
        const int studies = 4000;
        var random = new SeededRandom(20240812);
        var supported = 0;
        var values = new double[n];
        for (var i = 0; i < studies; i++)
        {
            for (var j = 0; j < n; j++)
            {
                values[j] = change + (deviation * random.NextNormal());
            }

            var mean = Computed.Value(ArithmeticMean.WithInterval(values, 0.9));
            supported += mean.Lower > -limit && mean.Upper < limit ? 1 : 0;
        }

        Close.Absolute(
            exact,
            (double)supported / studies,
            (4 * Math.Sqrt(exact * (1 - exact) / studies)) + 0.0005
        );
    }

    // Both criteria together, as simulated by an independent program to two or three decimals: mean within the first limit, lower bound of the share within the
    // second at 85 % or more. Whatever their dependence, the joint power lies between p₁ + p₂ − 1 and the smaller of the two.
    [Theory]
    [InlineData(20, 3, 3, 7.5, 15, 0.999)]
    [InlineData(20, 6, 3, 7.5, 15, 0.69)]
    [InlineData(40, 6, 3, 7.5, 15, 0.93)]
    [InlineData(60, 6, 3, 7.5, 15, 0.985)]
    [InlineData(20, -5, 5, 10, 20, 0.97)]
    [InlineData(20, -5, 5, 10, 15, 0.63)]
    [InlineData(40, -5, 5, 10, 15, 0.94)]
    [InlineData(60, -5, 5, 10, 15, 0.99)]
    public void Joint_power_lies_between_what_the_two_powers_allow(
        int n,
        double change,
        double deviation,
        double meanLimit,
        double pairLimit,
        double joint
    )
    {
        const double rounding = 0.006;
        var mean = EquivalencePower.Of(n, change, deviation, -meanLimit, meanLimit, 0.9);
        var share =
            Normal.Cdf((pairLimit - change) / deviation)
            - Normal.Cdf((-pairLimit - change) / deviation);
        var individual = IndividualPower.Of(n, share, 0.85, 0.95);

        Assert.InRange(
            joint,
            mean + individual - 1 - rounding,
            Math.Min(mean, individual) + rounding
        );
    }

    [Fact]
    public void At_the_limit_the_power_is_at_most_half_of_one_minus_the_level()
    {
        foreach (var n in (int[])[2, 5, 20, 100])
        {
            Assert.InRange(EquivalencePower.Of(n, 7.5, 3, -7.5, 7.5, 0.9), 0, 0.05 + 1e-12);
        }

        Close.Absolute(0.05, EquivalencePower.Of(100, 7.5, 3, -7.5, 7.5, 0.9), 1e-10);
    }

    [Fact]
    public void Shift_scale_and_mirror_change_nothing()
    {
        var power = EquivalencePower.Of(12, 2, 4, -6, 5, 0.9);

        Close.Absolute(power, EquivalencePower.Of(12, 102, 4, 94, 105, 0.9), 1e-12);
        Close.Absolute(power, EquivalencePower.Of(12, 0.2, 0.4, -0.6, 0.5, 0.9), 1e-12);
        Close.Absolute(power, EquivalencePower.Of(12, -2, 4, -5, 6, 0.9), 1e-12);
    }

    [Fact]
    public void Spread_far_beyond_the_limits_leaves_no_power_and_none_leaves_certainty()
    {
        Close.Absolute(0, EquivalencePower.Of(20, 0, 1e6, -1, 1, 0.9), 1e-12);
        Close.Absolute(1, EquivalencePower.Of(20, 0, 1e-6, -1, 1, 0.9), 1e-12);
        Close.Absolute(0, EquivalencePower.Of(20, 2, 1e-6, -1, 1, 0.9), 1e-12);
        Close.Absolute(1, EquivalencePower.Of(10_000, 0, 1, -1, 1, 0.9), 1e-12);
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("n", () => EquivalencePower.Of(1, 0, 1, -1, 1, 0.9));
        Assert.Throws<ArgumentException>(
            "standardDeviation",
            () => EquivalencePower.Of(5, 0, 0, -1, 1, 0.9)
        );
        Assert.Throws<ArgumentException>("upper", () => EquivalencePower.Of(5, 0, 1, 1, 1, 0.9));
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => EquivalencePower.Of(5, 0, 1, -1, 1, 1)
        );
        Assert.Throws<ArgumentException>(
            "meanChange",
            () => EquivalencePower.Of(5, double.NaN, 1, -1, 1, 0.9)
        );
    }

    [Fact]
    public void What_is_no_number_throws()
    {
        Assert.Throws<ArgumentException>(
            "standardDeviation",
            () => EquivalencePower.Of(5, 0, double.PositiveInfinity, -1, 1, 0.9)
        );
        Assert.Throws<ArgumentException>(
            "lower",
            () => EquivalencePower.Of(5, 0, 1, double.NegativeInfinity, 1, 0.9)
        );
        Assert.Throws<ArgumentException>(
            "upper",
            () => EquivalencePower.Of(5, 0, 1, -1, double.PositiveInfinity, 0.9)
        );
    }
}

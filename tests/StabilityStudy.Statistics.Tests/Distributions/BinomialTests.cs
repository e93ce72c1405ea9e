using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

public sealed class BinomialTests
{
    [Fact]
    public void Probabilities_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/binomial.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var expected = table.Number(row, "cdf");
            var actual = Binomial.Cdf(
                table.Whole(row, "successes"),
                table.Whole(row, "trials"),
                table.Number(row, "prob")
            );
            Close.Absolute(expected, actual, 1e-15 + (1e-12 * expected));
        }
    }

    [Fact]
    public void Probabilities_agree_with_counting_all_outcomes_of_four_trials()
    {
        foreach (var p in new[] { 0, 0.2, 0.5, 1 })
        {
            var q = 1 - p;
            Close.Absolute(q * q * q * q, Binomial.Cdf(0, 4, p), 1e-14);
            Close.Absolute((q * q * q * q) + (4 * p * q * q * q), Binomial.Cdf(1, 4, p), 1e-14);
            Close.Absolute(1 - (p * p * p * p), Binomial.Cdf(3, 4, p), 1e-14);
        }
    }

    [Fact]
    public void Fewer_than_none_never_happens_and_all_or_fewer_always()
    {
        Assert.Equal(0, Binomial.Cdf(-1, 5, 0.5));
        Assert.Equal(1, Binomial.Cdf(5, 5, 0.5));
        Assert.Equal(1, Binomial.Cdf(9, 5, 0.5));
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("trials", () => Binomial.Cdf(0, 0, 0.5));
        Assert.Throws<ArgumentException>("successProbability", () => Binomial.Cdf(0, 5, 1.01));
        Assert.Throws<ArgumentException>(
            "successProbability",
            () => Binomial.Cdf(0, 5, double.NaN)
        );
    }
}

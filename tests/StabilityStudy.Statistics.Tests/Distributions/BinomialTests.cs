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

    [Fact]
    public void At_least_so_many_is_one_minus_at_most_one_fewer()
    {
        foreach (var p in new[] { 0, 0.2, 0.5, 0.9, 1 })
        {
            for (var successes = 1; successes <= 6; successes++)
            {
                Close.Absolute(
                    1 - Binomial.Cdf(successes - 1, 6, p),
                    Binomial.AtLeast(successes, 6, p),
                    1e-14
                );
            }
        }
    }

    [Fact]
    public void At_least_none_always_happens_and_more_than_all_never()
    {
        Assert.Equal(1, Binomial.AtLeast(0, 5, 0.3));
        Assert.Equal(1, Binomial.AtLeast(-1, 5, 0.3));
        Assert.Equal(0, Binomial.AtLeast(6, 5, 0.3));
        Assert.Throws<ArgumentException>("trials", () => Binomial.AtLeast(1, 0, 0.3));
        Assert.Throws<ArgumentException>("successProbability", () => Binomial.AtLeast(1, 5, 1.01));
    }

    /// <summary>One minus the other tail would leave nothing of it.</summary>
    [Fact]
    public void A_small_upper_tail_keeps_its_digits() =>
        Close.Relative(1e-30, Binomial.AtLeast(3, 3, 1e-10), 1e-12);
}

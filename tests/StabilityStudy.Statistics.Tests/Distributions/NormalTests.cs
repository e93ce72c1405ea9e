using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Tests.Distributions;

public sealed class NormalTests
{
    [Fact]
    public void Quantiles_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/normal.csv");
        for (var row = 0; row < table.Count; row++)
        {
            Close.Relative(table.Number(row, "z"), Normal.Quantile(table.Number(row, "p")), 1e-12);
        }
    }

    [Fact]
    public void Probability_undoes_the_quantile()
    {
        foreach (var p in new[] { 1e-12, 0.001, 0.025, 0.4, 0.5, 0.9, 0.999999 })
        {
            Close.Relative(p, Normal.Cdf(Normal.Quantile(p)), 1e-12);
        }
    }

    [Fact]
    public void Half_of_the_probability_lies_below_zero() => Assert.Equal(0.5, Normal.Cdf(0));

    [Fact]
    public void Infinities_have_all_or_nothing_below_them()
    {
        Assert.Equal(0, Normal.Cdf(double.NegativeInfinity));
        Assert.Equal(1, Normal.Cdf(double.PositiveInfinity));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void Probability_outside_the_open_unit_interval_throws(double p) =>
        Assert.Throws<ArgumentException>("probability", () => Normal.Quantile(p));

    [Fact]
    public void Not_a_number_throws() =>
        Assert.Throws<ArgumentException>("z", () => Normal.Cdf(double.NaN));
}

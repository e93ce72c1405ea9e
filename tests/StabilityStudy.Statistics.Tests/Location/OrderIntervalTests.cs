using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Arguments that no interval between order statistics takes.</summary>
public sealed class OrderIntervalTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    [InlineData(double.NaN)]
    public void A_level_outside_zero_to_one_is_the_callers_mistake(double level)
    {
        double[] values = [1, 2, 3, 4, 5, 6, 7];

        Assert.ThrowsAny<ArgumentException>(() => Median.WithInterval(values, level));
        Assert.ThrowsAny<ArgumentException>(() => HodgesLehmann.WithInterval(values, level));
        Assert.ThrowsAny<ArgumentException>(() => Median.WithInterval([], level));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_value_that_is_no_number_is_the_callers_mistake(double value)
    {
        double[] values = [1, 2, 3, value, 5, 6, 7];

        Assert.Throws<ArgumentException>("values", () => Median.WithInterval(values, 0.9));
        Assert.Throws<ArgumentException>("values", () => HodgesLehmann.WithInterval(values, 0.9));
    }
}

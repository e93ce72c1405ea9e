using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Sums of values of very different size, far from zero or near the ends of what a double holds; the results follow from whole numbers.</summary>
public sealed class MomentsTests
{
    [Theory]
    [InlineData(new[] { 1, 1e16, 1, -1e16 }, 0.5)]
    [InlineData(new[] { 1e16, 1, 1, -1e16 }, 0.5)]
    [InlineData(new[] { -1e16, 1, 2, 1e16 }, 0.75)]
    [InlineData(new[] { 1, -1e16, 2, 1e16, 3 }, 1.2)]
    public void Small_values_are_not_lost_beside_large_ones(double[] values, double mean) =>
        Assert.Equal(mean, Moments.Of(values).Mean);

    [Fact]
    public void A_mean_that_had_to_be_rounded_is_made_good_in_the_squares()
    {
        // Deviations of 0, 2, 2 have the variance 4/3; their mean is rounded to 10¹⁶ + 2, a third of a unit in the last place away.
        var moments = Moments.Of([1e16, 1e16 + 2, 1e16 + 2]);

        Close.Relative(Math.Sqrt(4.0 / 3), moments.StandardDeviation, 1e-15);
    }

    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e-200)]
    [InlineData(1)]
    [InlineData(1e200)]
    [InlineData(5e307)]
    public void Squares_neither_vanish_nor_overflow(double unit)
    {
        var moments = Moments.Of([-unit, unit, 0, 0, -unit, unit]);

        Assert.Equal((6, 0), (moments.Count, moments.Mean));
        Close.Relative(Math.Sqrt(0.8) * unit, moments.StandardDeviation, 1e-15);
        Assert.Equal((-unit, unit), (moments.Minimum, moments.Maximum));
    }

    [Theory]
    [InlineData(new double[] { 0, 0, 0, 7 }, 3.5)]
    [InlineData(new double[] { 0, 7, 7, 7 }, 3.5)]
    public void One_value_far_from_the_others_on_either_side(double[] values, double deviation) =>
        Close.Relative(deviation, Moments.Of(values).StandardDeviation, 1e-15);

    [Fact]
    public void One_far_value_among_many_overflows_on_neither_side()
    {
        // n − 1 zeros and one value v: the standard deviation is v/√n. The scale must come from the farther side.
        foreach (var far in new[] { 1e-170, 1e170, -1e-170, -1e170 })
        {
            double[] values = [.. Enumerable.Repeat(0.0, 99), far];
            Close.Relative(Math.Abs(far) / 10, Moments.Of(values).StandardDeviation, 1e-14);
        }
    }

    [Fact]
    public void Values_all_the_same_have_exactly_no_spread()
    {
        var moments = Moments.Of([0.1, 0.1, 0.1]);

        Assert.True(moments.IsConstant);
        Assert.Equal((3, 0.1, 0), (moments.Count, moments.Mean, moments.StandardDeviation));
        Assert.False(Moments.Of([0.1, 0.1, 0.2]).IsConstant);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3.9, 2)]
    [InlineData(4, 4)]
    [InlineData(0.7, 0.5)]
    [InlineData(1e-3, 1 / 1024.0)]
    public void A_scale_is_the_power_of_two_at_or_below(double magnitude, double scale) =>
        Assert.Equal(scale, Moments.ScaleOf(magnitude));
}

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class SpreadTests
{
    [Fact]
    public void Skewness_of_three_values_is_the_one_worked_by_hand()
    {
        // 0, 0, 3: mean 1, s² = 3, Σ(x − 1)³ = 6, so G₁ = 3/(2·1)·6/3^1.5 = √3.
        var spread = Computed.Value(Spread.Summarize([0, 0, 3]));

        Close.Relative(Math.Sqrt(3), spread.Skewness, 1e-14);
        Assert.Equal((3, 1, 0, 3), (spread.Count, spread.Mean, spread.Minimum, spread.Maximum));
        Close.Relative(Math.Sqrt(3), spread.StandardDeviation, 1e-14);
    }

    [Fact]
    public void Symmetric_values_have_no_skewness() =>
        Close.Absolute(0, Computed.Value(Spread.Summarize([-2, -1, 0, 1, 2])).Skewness, 1e-15);

    [Fact]
    public void Skewness_turns_with_the_values()
    {
        var right = Computed.Value(Spread.Summarize([1, 2, 3, 9])).Skewness;
        var left = Computed.Value(Spread.Summarize([-1, -2, -3, -9])).Skewness;

        Close.Relative(-right, left, 1e-14);
    }

    [Fact]
    public void Fewer_than_three_values_are_too_few()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, Spread.Summarize([]));
        Computed.Refusal(AssumptionCode.TooFewValues, Spread.Summarize([1, 2]));
    }

    [Fact]
    public void Constant_values_have_no_skewness_at_all() =>
        Computed.Refusal(AssumptionCode.ZeroSpread, Spread.Summarize([0.3, 0.3, 0.3]));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void A_value_that_is_no_number_is_the_callers_mistake(double value) =>
        Assert.Throws<ArgumentException>("values", () => Spread.Summarize([1, 2, value, 4]));
}

using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class SmallestNTests
{
    [Fact]
    public void Power_is_reached_at_the_number_and_at_none_below()
    {
        static double PowerAt(int n) => IndividualPower.Of(n, 0.98, 0.85, 0.95);

        var n = SmallestN.Reaching(0.9, PowerAt, 1, 200)!.Value;

        Assert.True(PowerAt(n) >= 0.9);
        Assert.All(Enumerable.Range(1, n - 1), fewer => Assert.True(PowerAt(fewer) < 0.9));
    }

    [Theory]
    // Known sizes at which the exact lower bound reaches the share without any failure.
    [InlineData(0.85, 19)]
    [InlineData(0.90, 29)]
    [InlineData(0.95, 59)]
    public void A_true_share_of_one_needs_the_size_without_failures(double share, int size)
    {
        double PowerAt(int n) => IndividualPower.Of(n, 1, share, 0.95);

        Assert.Equal(size, SmallestN.Reaching(0.99, PowerAt, 1, 100));
        Assert.Equal(size, SmallestN.Reaching(0.99, PowerAt, 1, size));
        Assert.Null(SmallestN.Reaching(0.99, PowerAt, 1, size - 1));
    }

    [Fact]
    public void A_power_that_is_met_exactly_is_enough()
    {
        static double PowerAt(int n) => EquivalencePower.Of(n, 4, 3, -7.5, 7.5, 0.9);

        Assert.Equal(10, SmallestN.Reaching(PowerAt(10), PowerAt, 2, 10));
        Assert.Equal(5, SmallestN.Reaching(0.01, _ => 0.5, 5, 9));
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("power", () => SmallestN.Reaching(1, _ => 1, 2, 10));
        Assert.Throws<ArgumentException>("most", () => SmallestN.Reaching(0.9, _ => 1, 2, 1));
    }
}

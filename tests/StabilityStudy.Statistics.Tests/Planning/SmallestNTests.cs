using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class SmallestNTests
{
    [Fact]
    public void Power_is_reached_at_the_number_and_at_none_below()
    {
        var n = SmallestN.ForEquivalence(0.9, 6, 3, -7.5, 7.5, 0.9, 200)!.Value;
        Assert.True(EquivalencePower.Of(n, 6, 3, -7.5, 7.5, 0.9) >= 0.9);
        Assert.All(
            Enumerable.Range(2, n - 2),
            fewer => Assert.True(EquivalencePower.Of(fewer, 6, 3, -7.5, 7.5, 0.9) < 0.9)
        );

        var m = SmallestN.ForIndividual(0.9, 0.98, 0.85, 0.95, 200)!.Value;
        Assert.True(IndividualPower.Of(m, 0.98, 0.85, 0.95) >= 0.9);
        Assert.All(
            Enumerable.Range(1, m - 1),
            fewer => Assert.True(IndividualPower.Of(fewer, 0.98, 0.85, 0.95) < 0.9)
        );
    }

    [Theory]
    // Known sizes at which the exact lower bound reaches the share without any failure.
    [InlineData(0.85, 19)]
    [InlineData(0.90, 29)]
    [InlineData(0.95, 59)]
    public void A_true_share_of_one_needs_the_size_without_failures(double share, int n) =>
        Assert.Equal(n, SmallestN.ForIndividual(0.99, 1, share, 0.95, 100));

    [Fact]
    public void A_cap_below_the_number_gives_none()
    {
        Assert.Null(SmallestN.ForIndividual(0.99, 1, 0.85, 0.95, 18));
        Assert.Null(SmallestN.ForEquivalence(0.8, 8, 3, -7.5, 7.5, 0.9, 300));
    }

    [Fact]
    public void The_cap_itself_is_tried_and_a_power_that_is_met_exactly_is_enough()
    {
        Assert.Equal(19, SmallestN.ForIndividual(0.99, 1, 0.85, 0.95, 19));
        var power = EquivalencePower.Of(10, 4, 3, -7.5, 7.5, 0.9);
        Assert.Equal(10, SmallestN.ForEquivalence(power, 4, 3, -7.5, 7.5, 0.9, 10));
        Assert.Null(SmallestN.ForEquivalence(power, 4, 3, -7.5, 7.5, 0.9, 9));
        Assert.Equal(2, SmallestN.ForEquivalence(0.01, 0, 1, -7.5, 7.5, 0.9, 2));
    }

    [Fact]
    public void Clusters_of_one_pair_are_pairs() =>
        Assert.Equal(
            SmallestN.ForEquivalence(0.9, 6, 3, -7.5, 7.5, 0.9, 200),
            SmallestN.ForClusteredEquivalence(0.9, 6, 3, 1, -7.5, 7.5, 0.9, 200)
        );

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "power",
            () => SmallestN.ForEquivalence(1, 0, 1, -1, 1, 0.9, 10)
        );
        Assert.Throws<ArgumentException>(
            "mostPairs",
            () => SmallestN.ForEquivalence(0.9, 0, 1, -1, 1, 0.9, 1)
        );
        Assert.Throws<ArgumentException>(
            "mostPairs",
            () => SmallestN.ForIndividual(0.9, 1, 0.8, 0.95, 0)
        );
    }

    [Fact]
    public void Whole_clusters_bring_the_power()
    {
        var n = SmallestN.ForClusteredEquivalence(0.8, 5, 2, 4, -7.5, 7.5, 0.9, 200)!.Value;
        double PowerOf(int clusters) => EquivalencePower.Of(clusters, 5, 2, -7.5, 7.5, 0.9);

        Assert.Equal(0, n % 4);
        Assert.True(PowerOf(n / 4) >= 0.8 && PowerOf((n / 4) - 1) < 0.8);
        Assert.Throws<ArgumentException>(() =>
            SmallestN.ForClusteredEquivalence(0.8, 5, 2, 0.5, -7.5, 7.5, 0.9, 200)
        );
    }
}

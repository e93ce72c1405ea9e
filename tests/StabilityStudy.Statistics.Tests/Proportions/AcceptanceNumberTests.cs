using CsCheck;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Statistics.Tests.Proportions;

public sealed class AcceptanceNumberTests
{
    // Known one-sided 95 % sizes; 59/93/124/153/181 is the classical table for a share of 95 %.
    [Theory]
    [InlineData(0.85, 19, 30, 40, 50, 59)]
    [InlineData(0.90, 29, 46, 61, 76, 89)]
    [InlineData(0.95, 59, 93, 124, 153, 181)]
    public void Sizes_are_the_known_ones(double share, params int[] sizes)
    {
        for (var outside = 0; outside < sizes.Length; outside++)
        {
            int? fewer = outside == 0 ? null : outside - 1;
            Assert.Equal(outside, AcceptanceNumber.Of(sizes[outside], share, 0.95));
            Assert.Equal(fewer, AcceptanceNumber.Of(sizes[outside] - 1, share, 0.95));
        }
    }

    [Fact]
    public void Lower_bound_reaches_the_share_with_the_most_outside_and_not_with_one_more() =>
        Gen.Select(Gen.Int[1, 250], Gen.Double[0.3, 0.97], Gen.Double[0.5, 0.99])
            .Sample(
                (trials, share, level) =>
                {
                    var most = AcceptanceNumber.Of(trials, share, level) ?? -1;
                    double LowerWith(int outside) =>
                        ClopperPearson.Bounds(trials - outside, trials, level).OneSidedLower;

                    Assert.True(most < 0 || LowerWith(most) >= share - 1e-12);
                    Assert.True(LowerWith(most + 1) < share + 1e-12);
                }
            );

    [Fact]
    public void Forty_trials_allow_two_outside_at_85_percent() =>
        Assert.Equal(2, AcceptanceNumber.Of(40, 0.85, 0.95));

    [Fact]
    public void Eighteen_trials_do_not_suffice_at_85_percent_even_without_any_outside()
    {
        Assert.Null(AcceptanceNumber.Of(18, 0.85, 0.95));
        Assert.Equal(0, AcceptanceNumber.Of(19, 0.85, 0.95));
    }

    [Fact]
    public void Large_sizes_are_found_too() =>
        // ln 0.05 / ln 0.9999 = 29955.8
        Assert.Equal(
            (null, 0),
            (AcceptanceNumber.Of(29_955, 0.9999, 0.95), AcceptanceNumber.Of(29_956, 0.9999, 0.95))
        );

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("requiredShare", () => AcceptanceNumber.Of(10, 1, 0.95));
        Assert.Throws<ArgumentException>("confidenceLevel", () => AcceptanceNumber.Of(10, 0.9, 0));
        Assert.Throws<ArgumentException>("trials", () => AcceptanceNumber.Of(0, 0.9, 0.95));
    }

    [Fact]
    public void Trials_number_from_one_to_a_million()
    {
        Assert.Equal(0, AcceptanceNumber.Of(1, 0.4, 0.5));
        Assert.NotNull(AcceptanceNumber.Of(1_000_000, 0.85, 0.95));
        Assert.Throws<ArgumentException>(() => AcceptanceNumber.Of(0, 0.5, 0.5));
        Assert.Throws<ArgumentException>(() => AcceptanceNumber.Of(1_000_001, 0.85, 0.95));
    }
}

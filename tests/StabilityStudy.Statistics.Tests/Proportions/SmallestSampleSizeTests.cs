using CsCheck;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Statistics.Tests.Proportions;

public sealed class SmallestSampleSizeTests
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
            Assert.Equal(sizes[outside], SmallestSampleSize.ForShare(outside, share, 0.95));
        }
    }

    [Fact]
    public void Size_is_the_first_whose_lower_bound_reaches_the_share() =>
        Gen.Select(Gen.Int[0, 8], Gen.Double[0.3, 0.97], Gen.Double[0.5, 0.99])
            .Sample(
                (outside, share, level) =>
                {
                    var n = SmallestSampleSize.ForShare(outside, share, level);
                    Assert.True(
                        ClopperPearson.Bounds(n - outside, n, level).OneSidedLower >= share - 1e-12
                    );
                    if (n - 1 > outside)
                    {
                        Assert.True(
                            ClopperPearson.Bounds(n - 1 - outside, n - 1, level).OneSidedLower
                                < share + 1e-12
                        );
                    }
                }
            );

    [Fact]
    public void Most_outside_and_smallest_size_undo_each_other() =>
        Gen.Select(Gen.Int[1, 250], Gen.Double[0.3, 0.97])
            .Sample(
                (trials, share) =>
                {
                    var most = SmallestSampleSize.MostOutside(trials, share, 0.95);
                    if (most is { } outside)
                    {
                        Assert.True(SmallestSampleSize.ForShare(outside, share, 0.95) <= trials);
                    }

                    Assert.True(
                        SmallestSampleSize.ForShare((most ?? -1) + 1, share, 0.95) > trials
                    );
                }
            );

    [Fact]
    public void Forty_trials_allow_two_outside_at_85_percent() =>
        Assert.Equal(2, SmallestSampleSize.MostOutside(40, 0.85, 0.95));

    [Fact]
    public void Eighteen_trials_do_not_suffice_at_85_percent_even_without_any_outside()
    {
        Assert.Null(SmallestSampleSize.MostOutside(18, 0.85, 0.95));
        Assert.Equal(0, SmallestSampleSize.MostOutside(19, 0.85, 0.95));
    }

    [Fact]
    public void Large_sizes_are_found_too() =>
        // ln 0.05 / ln 0.9999 = 29955.8
        Assert.Equal(29_956, SmallestSampleSize.ForShare(0, 0.9999, 0.95));

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "outside",
            () => SmallestSampleSize.ForShare(-1, 0.9, 0.95)
        );
        Assert.Throws<ArgumentException>(
            "requiredShare",
            () => SmallestSampleSize.ForShare(0, 1, 0.95)
        );
        Assert.Throws<ArgumentException>(
            "requiredShare",
            () => SmallestSampleSize.ForShare(0, 0.9999999, 0.95)
        );
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => SmallestSampleSize.MostOutside(10, 0.9, 0)
        );
        Assert.Throws<ArgumentException>(
            "trials",
            () => SmallestSampleSize.MostOutside(0, 0.9, 0.95)
        );
    }
}

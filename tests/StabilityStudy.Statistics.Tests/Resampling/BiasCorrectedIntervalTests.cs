using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Resampling;

/// <summary>The parts of the interval against their definitions on a few values.</summary>
public sealed class BiasCorrectedIntervalTests
{
    private static readonly double[] s_drawn = [10, 1, 2, 2, 9, 2, 5, 6, 8, 7];
    private static readonly double[] s_balanced = [1, 2, 3];

    [Fact]
    public void Drawn_values_equal_to_the_estimate_count_half()
    {
        // One of ten below 2 and four at or below: (1 + 4)/20 = 1/4.
        var found = Computed.Value(BiasCorrectedInterval.Of(2, s_drawn, s_balanced, 10, 0.5));

        Close.Absolute(Normal.Quantile(0.25), found.BiasCorrection, 1e-14);
        Assert.Equal(0, found.Acceleration);
        Close.Relative(End(-0.67448975019608171), found.Lower, 1e-12);
        Close.Relative(End(0.67448975019608171), found.Upper, 1e-12);

        static double End(double z) =>
            Percentile.Of(
                [.. s_drawn.Order()],
                Normal.Cdf((2 * Normal.Quantile(0.25)) + z),
                PercentileType.Type7
            );
    }

    [Fact]
    public void A_drawn_value_within_the_rounding_of_its_terms_equals_the_estimate()
    {
        double[] drawn = [1, 2 - 4e-16, 2 - 4e-16, 2, 3, 3, 3, 3];

        var found = Computed.Value(BiasCorrectedInterval.Of(2, drawn, s_balanced, 10, 0.5));

        // One of eight below and four at or below: (1 + 4)/16.
        Close.Absolute(Normal.Quantile(5 / 16.0), found.BiasCorrection, 1e-14);
    }

    [Fact]
    public void Acceleration_is_the_sixth_of_the_skewness_of_the_values_without_one()
    {
        // 0, 0, 3: mean 1; Σ(1 − v)³ = 1 + 1 − 8 = −6 and Σ(1 − v)² = 6, so a = −6/(6·6^1.5) = −6^−1.5.
        var found = Computed.Value(BiasCorrectedInterval.Of(4, s_drawn, [0, 0, 3], 10, 0.5));

        Close.Relative(-Math.Pow(6, -1.5), found.Acceleration, 1e-14);
        Close.Absolute(Normal.Quantile(0.4), found.BiasCorrection, 1e-14);
    }

    [Fact]
    public void Values_without_one_that_are_all_the_same_give_no_acceleration() =>
        Assert.Equal(
            0,
            Computed.Value(BiasCorrectedInterval.Of(4, s_drawn, [2, 2, 2], 10, 0.5)).Acceleration
        );

    [Theory]
    [InlineData(0.5)]
    [InlineData(10.5)]
    public void An_estimate_beyond_all_drawn_values_has_no_interval(double estimate) =>
        Computed.Refusal(
            AssumptionCode.NoIntervalAtThisSize,
            BiasCorrectedInterval.Of(estimate, s_drawn, s_balanced, 10, 0.5)
        );

    [Theory]
    [InlineData(1, 0.05)]
    [InlineData(10, 0.95)]
    public void An_estimate_at_an_end_of_the_drawn_values_still_has_one(
        double estimate,
        double share
    )
    {
        var found = Computed.Value(
            BiasCorrectedInterval.Of(estimate, s_drawn, s_balanced, 10, 0.5)
        );

        Close.Absolute(Normal.Quantile(share), found.BiasCorrection, 1e-14);
        Assert.InRange(found.Lower, 1, found.Upper);
        Assert.InRange(found.Upper, found.Lower, 10);
    }

    [Fact]
    public void A_correction_that_leaves_the_scale_has_no_interval() =>
        // One value far from all others: a is nearly its largest, 1/6; z₀ + z = 1.64 + 5.33 is more than 6.
        Computed.Refusal(
            AssumptionCode.NoIntervalAtThisSize,
            BiasCorrectedInterval.Of(
                10,
                s_drawn,
                [.. Enumerable.Repeat(1.0, 999), 0],
                10,
                0.9999999
            )
        );
}

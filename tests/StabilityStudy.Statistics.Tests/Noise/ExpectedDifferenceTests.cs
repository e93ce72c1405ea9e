using StabilityStudy.Statistics.Noise;

namespace StabilityStudy.Statistics.Tests.Noise;

public sealed class ExpectedDifferenceTests
{
    [Fact]
    public void Two_single_results_differ_by_root_two_coefficients_of_variation() =>
        Close.Relative(
            3 * Math.Sqrt(2),
            ExpectedDifference.StandardDeviationPercent(3, 1, 1),
            1e-15
        );

    [Fact]
    public void Replicates_divide_the_variance_of_their_half() =>
        // √(9/4 + 9/9) = √3.25
        Close.Relative(
            Math.Sqrt(3.25),
            ExpectedDifference.StandardDeviationPercent(3, 4, 9),
            1e-15
        );

    [Fact]
    public void A_method_without_imprecision_gives_no_difference() =>
        Assert.Equal(0, ExpectedDifference.StandardDeviationPercent(0, 1, 2));

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "cvPercent",
            () => ExpectedDifference.StandardDeviationPercent(-1, 1, 1)
        );
        Assert.Throws<ArgumentException>(
            "cvPercent",
            () => ExpectedDifference.StandardDeviationPercent(double.NaN, 1, 1)
        );
        Assert.Throws<ArgumentException>(
            "baselineReplicates",
            () => ExpectedDifference.StandardDeviationPercent(1, 0, 1)
        );
        Assert.Throws<ArgumentException>(
            "delayedReplicates",
            () => ExpectedDifference.StandardDeviationPercent(1, 1, 0)
        );
    }
}

using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class LimitsOfAgreementTests
{
    [Fact]
    public void Peak_flow_limits_are_the_published_mean_and_deviation_with_the_factor_1_96()
    {
        // Mean −2.1 and SD 38.8 are printed (1986), there with the factor 2: −79.7 to 75.5 L/min.
        var limits = Computed.Value(LimitsOfAgreement.Compute(PeakFlow.Differences(), 0.95));

        Close.Absolute(-2.117647, limits.Mean, 5e-7);
        Close.Absolute(38.765130, limits.StandardDeviation, 5e-7);
        Close.Absolute(-79.7, limits.Mean - (2 * limits.StandardDeviation), 0.06);
        Close.Absolute(75.5, limits.Mean + (2 * limits.StandardDeviation), 0.1);
        Close.Relative(limits.Mean - (1.96 * limits.StandardDeviation), limits.Lower, 1e-14);
        Close.Relative(limits.Mean + (1.96 * limits.StandardDeviation), limits.Upper, 1e-14);
    }

    [Fact]
    public void Approximate_interval_is_near_the_published_one_with_three_variances()
    {
        // Printed (1986): −114.3 to −45.1 and 40.9 to 110.1, with the factor 2 and SE √(3s²/n). With 1.96 the standard error
        // √(1/17 + 1.96²/32)·s is 16.388 instead of 16.285 and the limits lie 0.04·s closer.
        var limits = Computed.Value(LimitsOfAgreement.Compute(PeakFlow.Differences(), 0.95));

        var reach = 2.119905 * 38.765130 * Math.Sqrt((1.0 / 17) + (3.8416 / 32));
        Close.Absolute(limits.Lower - reach, limits.LowerApproximate.Lower, 1e-4);
        Close.Absolute(limits.Lower + reach, limits.LowerApproximate.Upper, 1e-4);
        Close.Absolute(limits.Upper - reach, limits.UpperApproximate.Lower, 1e-4);
        Close.Absolute(limits.Upper + reach, limits.UpperApproximate.Upper, 1e-4);
        Close.Absolute(-114.3, limits.LowerApproximate.Lower, 2);
        Close.Absolute(110.1, limits.UpperApproximate.Upper, 2);
    }

    [Fact]
    public void Exact_intervals_mirror_each_other()
    {
        var limits = Computed.Value(LimitsOfAgreement.Compute([3, -1, 4, 1, -5, 9], 0.9));

        Close.Absolute(2 * limits.Mean, limits.LowerExact.Lower + limits.UpperExact.Upper, 1e-12);
        Close.Absolute(2 * limits.Mean, limits.LowerExact.Upper + limits.UpperExact.Lower, 1e-12);
    }

    [Fact]
    public void Exact_interval_reaches_farther_out_than_in()
    {
        var limits = Computed.Value(LimitsOfAgreement.Compute([3, -1, 4, 1, -5, 9], 0.95));

        Assert.True(
            limits.UpperExact.Lower < limits.Upper && limits.Upper < limits.UpperExact.Upper
        );
        Assert.True(
            limits.UpperExact.Upper - limits.Upper > limits.Upper - limits.UpperExact.Lower
        );
    }

    [Fact]
    public void Exact_interval_is_that_of_R()
    {
        // R 4.2.2: d <- c(3,-1,4,1,-5,9); mean(d) + sd(d)/sqrt(6)*qt(c(0.025, 0.975), 5, ncp = 1.96*sqrt(6))
        var estimate = LimitsOfAgreement.Compute([3, -1, 4, 1, -5, 9], 0.95);
        var limits = Computed.Value(estimate);

        Close.Absolute(6.54197928, limits.UpperExact.Lower, 1e-6);
        Close.Absolute(26.11265259, limits.UpperExact.Upper, 1e-6);
        Assert.Empty(estimate.Notes);
    }

    [Fact]
    public void Fewer_than_two_differences_are_too_few()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, LimitsOfAgreement.Compute([], 0.95));
        Computed.Refusal(AssumptionCode.TooFewValues, LimitsOfAgreement.Compute([1], 0.95));
        Assert.Equal(2, Computed.Value(LimitsOfAgreement.Compute([1, 2], 0.95)).Count);
    }

    [Fact]
    public void Constant_differences_give_limits_without_width_and_a_remark()
    {
        var estimate = LimitsOfAgreement.Compute([0.2, 0.2, 0.2], 0.95);

        var limits = Computed.Value(estimate);
        Assert.Equal((0.2, 0.2), (limits.Lower, limits.UpperExact.Upper));
        Assert.Equal(EstimateNote.SameValues, Assert.Single(estimate.Notes));
    }

    [Fact]
    public void Input_is_left_as_it_was()
    {
        double[] differences = [3, 1, 2];

        LimitsOfAgreement.Compute(differences, 0.95);

        Assert.Equal([3, 1, 2], differences);
    }

    [Fact]
    public void A_difference_that_is_no_number_and_a_level_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "differences",
            () => LimitsOfAgreement.Compute([1, double.NaN], 0.95)
        );
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => LimitsOfAgreement.Compute([1, 2], 1)
        );
    }

    [Fact]
    public void Exact_interval_covers_the_true_limit_as_often_as_stated()
    {
        // Ten differences with mean 0 and SD 1: the quantity covered is μ + 1.96σ itself.
        const int repetitions = 600;
        var random = new SeededRandom(4);
        var differences = new double[10];
        var upper = 0;
        var lower = 0;
        for (var i = 0; i < repetitions; i++)
        {
            for (var j = 0; j < differences.Length; j++)
            {
                differences[j] = random.NextNormal();
            }

            var limits = Computed.Value(LimitsOfAgreement.Compute(differences, 0.9));
            upper += limits.UpperExact.Lower < 1.96 && 1.96 < limits.UpperExact.Upper ? 1 : 0;
            lower += limits.LowerExact.Lower < -1.96 && -1.96 < limits.LowerExact.Upper ? 1 : 0;
        }

        var margin = 3.5 * Math.Sqrt(0.09 / repetitions);
        Close.Absolute(0.9, (double)upper / repetitions, margin);
        Close.Absolute(0.9, (double)lower / repetitions, margin);
    }
}

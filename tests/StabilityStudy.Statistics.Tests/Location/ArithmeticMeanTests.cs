using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class ArithmeticMeanTests
{
    // Certified values: NIST Statistical Reference Datasets, univariate. NumAcc3 and NumAcc4 hold decimals near 10⁶ and 10⁷ whose
    // nearest doubles already have a standard deviation 6e-9 (relative) off the certified one; R gives the same.
    [Theory]
    [InlineData("lew", 200, -177.435, 277.332168044316, 1e-14)]
    [InlineData("mavro", 50, 2.001856, 0.000429123454003053, 1e-11)]
    [InlineData("lottery", 218, 518.958715596330, 291.699727470969, 1e-14)]
    [InlineData("numacc1", 3, 10000002, 1, 0)]
    [InlineData("numacc2", 1001, 1.2, 0.1, 1e-14)]
    [InlineData("numacc3", 1001, 1000000.2, 0.1, 1e-8)]
    [InlineData("numacc4", 1001, 10000000.2, 0.1, 1e-8)]
    public void Certified_means_and_deviations_are_met(
        string dataSet,
        int count,
        double mean,
        double deviation,
        double deviationTolerance
    )
    {
        var values = ReferenceTable.Read($"published/nist_{dataSet}.csv").Column("y");

        var interval = Computed.Value(ArithmeticMean.WithInterval(values, 0.95));

        Assert.Equal(count, interval.Count);
        Close.Relative(mean, interval.Mean, 1e-14);
        Close.Relative(deviation, interval.StandardDeviation, deviationTolerance);
    }

    [Fact]
    public void Peak_flow_differences_give_the_published_mean_and_interval()
    {
        // Bland and Altman (1986): mean −2.1, SD 38.8, SE 9.4, 95 % interval −22.0 to 17.8 L/min.
        var interval = Computed.Value(ArithmeticMean.WithInterval(PeakFlow.Differences(), 0.95));

        Close.Absolute(-2.1, interval.Mean, 0.05);
        Close.Absolute(38.8, interval.StandardDeviation, 0.05);
        Close.Absolute(9.4, interval.StandardError, 0.05);
        Close.Absolute(-22.0, interval.Lower, 0.05);
        Close.Absolute(17.8, interval.Upper, 0.05);
        Assert.Equal(16, interval.DegreesOfFreedom);
    }

    [Fact]
    public void Fewer_than_two_values_are_too_few()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, ArithmeticMean.WithInterval([], 0.9));
        Computed.Refusal(AssumptionCode.TooFewValues, ArithmeticMean.WithInterval([4], 0.9));
    }

    [Fact]
    public void Two_values_have_the_Cauchy_quantile()
    {
        var interval = Computed.Value(ArithmeticMean.WithInterval([1, 3], 0.90));

        Assert.Equal(2, interval.Mean);
        Close.Relative(2 + Math.Tan(0.45 * Math.PI), interval.Upper, 1e-13);
    }

    [Fact]
    public void Constant_values_give_their_value_with_a_remark()
    {
        var estimate = ArithmeticMean.WithInterval([0.1, 0.1, 0.1], 0.9);

        var interval = Computed.Value(estimate);
        Assert.Equal((0.1, 0.1, 0.1), (interval.Mean, interval.Lower, interval.Upper));
        Assert.Equal(EstimateNote.SameValues, Assert.Single(estimate.Notes));
    }

    [Fact]
    public void Values_that_differ_have_no_remark() =>
        Assert.Empty(ArithmeticMean.WithInterval([1, 1, 1.0000000001], 0.9).Notes);

    [Theory]
    [InlineData(1e299)]
    [InlineData(1e-290)]
    public void Huge_and_tiny_values_keep_their_spread(double unit)
    {
        var interval = Computed.Value(
            ArithmeticMean.WithInterval([2 * unit, 4 * unit, 9 * unit], 0.9)
        );

        Close.Relative(5 * unit, interval.Mean, 1e-14);
        Close.Relative(Math.Sqrt(13) * unit, interval.StandardDeviation, 1e-14);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e301)]
    public void A_value_that_is_no_number_throws(double value) =>
        Assert.Throws<ArgumentException>(
            "values",
            () => ArithmeticMean.WithInterval([1, value], 0.9)
        );

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    [InlineData(double.NaN)]
    public void A_level_outside_the_open_unit_interval_throws(double level) =>
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => ArithmeticMean.WithInterval([1, 2], level)
        );

    [Fact]
    public void Normal_samples_are_covered_as_often_as_stated()
    {
        const int repetitions = 4000;
        var random = new SeededRandom(1);
        var values = new double[8];
        var covered = 0;
        for (var i = 0; i < repetitions; i++)
        {
            for (var j = 0; j < values.Length; j++)
            {
                values[j] = random.NextNormal();
            }

            var interval = Computed.Value(ArithmeticMean.WithInterval(values, 0.9));
            covered += interval.Lower < 0 && 0 < interval.Upper ? 1 : 0;
        }

        Close.Absolute(0.9, (double)covered / repetitions, 3.5 * Math.Sqrt(0.09 / repetitions));
    }
}

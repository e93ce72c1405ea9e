using CsCheck;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class TwoOneSidedTestsTests
{
    // "Clinic" data and results of R's equivalence package as kept in the statsmodels test suite, test_tost.py.
    [Theory]
    [InlineData("var1", 0.1646666666666667, 0.1357514067862445, 0.003166881489265175)]
    [InlineData("var2", 0.5626666666666665, 0.2478276410785118, 0.4412034046017588)]
    public void Clinic_pairs_give_the_published_p_values(
        string variable,
        double mean,
        double standardError,
        double pValue
    )
    {
        var interval = Computed.Value(
            ArithmeticMean.WithInterval(Differences(variable, v => v), 0.9)
        );

        var test = Computed.Value(Test(interval, 0.6));

        Close.Relative(mean, interval.Mean, 1e-13);
        Close.Relative(standardError, interval.StandardError, 1e-13);
        Close.Relative(pValue, test.PValue, 1e-11);
        Assert.Equal(test.PValueUpper, test.PValue);
    }

    [Fact]
    public void Clinic_intervals_are_the_published_ones()
    {
        var first = Computed.Value(ArithmeticMean.WithInterval(Differences("var1", v => v), 0.9));
        var second = Computed.Value(ArithmeticMean.WithInterval(Differences("var2", v => v), 0.9));

        Close.Relative(-0.0744336620516462, first.Lower, 1e-11);
        Close.Relative(0.4037669953849797, first.Upper, 1e-12);
        Close.Absolute(0.1261653305, second.Lower, 5e-11);
        Close.Absolute(0.9991680028, second.Upper, 5e-11);
    }

    [Fact]
    public void Clinic_logarithms_give_the_published_p_value()
    {
        var interval = Computed.Value(
            ArithmeticMean.WithInterval(Differences("var1", Math.Log), 0.9)
        );

        var test = Computed.Value(Test(interval, Math.Log(1.25)));

        Close.Relative(0.0431223318225235, interval.Mean, 1e-12);
        Close.Relative(0.03819576328421437, interval.StandardError, 1e-12);
        Close.Relative(0.0001664157928976468, test.PValue, 1e-10);
    }

    [Fact]
    public void No_significant_difference_and_equivalence_are_two_questions()
    {
        var interval = Computed.Value(
            ArithmeticMean.WithInterval(Differences("var1", v => v), 0.9)
        );

        var difference = Computed.Value(PairedT.Compute(interval));

        Close.Relative(1.213001548676048, difference.T, 1e-12);
        Close.Relative(0.245199929713149, difference.PValue, 1e-11);
        Assert.True(Computed.Value(Test(interval, 0.6)).PValue < 0.05);
        Assert.True(Computed.Value(Test(interval, 0.3)).PValue > 0.05);
    }

    [Fact]
    public void Test_at_5_percent_and_90_percent_interval_decide_alike() =>
        Gen.Double[-10, 10]
            .Array[2, 15]
            .Where(v => v.Distinct().Count() > 1)
            .Sample(values =>
            {
                var interval = Computed.Value(ArithmeticMean.WithInterval(values, 0.9));
                var test = Computed.Value(Test(interval, 3));
                if (Math.Abs(test.PValue - 0.05) > 1e-9)
                {
                    Assert.Equal(interval.Lower > -3 && interval.Upper < 3, test.PValue < 0.05);
                }
            });

    [Fact]
    public void Limits_around_the_mean_give_the_same_p_value_on_both_sides()
    {
        var test = Computed.Value(TwoOneSidedTests.Compute(5, 1, 9, 3, 7));

        Assert.Equal(test.PValueLower, test.PValueUpper);
        Assert.Equal((3, 7), (test.LowerLimit, test.UpperLimit));
    }

    [Fact]
    public void No_spread_is_refused()
    {
        Computed.Refusal(AssumptionCode.ZeroSpread, TwoOneSidedTests.Compute(0, 0, 9, -1, 1));
        Computed.Refusal(
            AssumptionCode.ZeroSpread,
            PairedT.Compute(Computed.Value(ArithmeticMean.WithInterval([1, 1], 0.9)))
        );
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "standardError",
            () => TwoOneSidedTests.Compute(0, -1, 9, -1, 1)
        );
        Assert.Throws<ArgumentException>(
            "upperLimit",
            () => TwoOneSidedTests.Compute(0, 1, 9, 1, 1)
        );
        Assert.Throws<ArgumentException>(
            "degreesOfFreedom",
            () => TwoOneSidedTests.Compute(0, 1, 0, -1, 1)
        );
        Assert.Throws<ArgumentException>(
            "mean",
            () => TwoOneSidedTests.Compute(double.NaN, 1, 9, -1, 1)
        );
    }

    private static Estimate<EquivalenceTest> Test(MeanInterval interval, double limit) =>
        TwoOneSidedTests.Compute(
            interval.Mean,
            interval.StandardError,
            interval.DegreesOfFreedom,
            -limit,
            limit
        );

    private static double[] Differences(string variable, Func<double, double> scale)
    {
        var column = ReferenceTable.Read("published/tost_clinic_statsmodels.csv").Column(variable);
        return [.. Enumerable.Range(0, 15).Select(i => scale(column[i]) - scale(column[i + 15]))];
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void What_is_no_number_throws(double wrong)
    {
        Assert.Throws<ArgumentException>("mean", () => Of(wrong, 1, 10, -1, 1));
        Assert.Throws<ArgumentException>("standardError", () => Of(0, wrong, 10, -1, 1));
        Assert.Throws<ArgumentException>("degreesOfFreedom", () => Of(0, 0, -10, -1, 1));
        Assert.Throws<ArgumentException>("lowerLimit", () => Of(0, 1, 10, wrong, 1));
        Assert.Throws<ArgumentException>("upperLimit", () => Of(0, 1, 10, -1, wrong));

        static void Of(double mean, double error, double degrees, double lower, double upper) =>
            TwoOneSidedTests.Compute(mean, error, degrees, lower, upper);
    }
}

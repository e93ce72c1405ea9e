using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class OrdinaryLeastSquaresTests
{
    public static TheoryData<string> CaseNames => [.. Cases];

    [Fact]
    public void Norris_gives_the_certified_values()
    {
        var fit = OrdinaryLeastSquares
            .Fit(
                Column("published/nist_norris.csv", 1),
                Column("published/nist_norris.csv", 0),
                0.95
            )
            .Value!;

        Assert.Equal(36, fit.Count);
        Close(-0.262323073774029, fit.Intercept.Value, 1e-11);
        Close(0.232818234301152, fit.Intercept.StandardError, 1e-11);
        Close(1.00211681802045, fit.Slope.Value, 1e-12);
        Close(0.429796848199937, fit.Slope.StandardError * 1000, 1e-11);
        Close(0.884796396144373, fit.ResidualStandardDeviation, 1e-11);
    }

    [Theory]
    [MemberData(nameof(CaseNames))]
    public void Line_agrees_with_R(string name)
    {
        var expected = Expected("computed/regression_expected.csv", name);
        var pairs = Pairs(name);

        var fit = OrdinaryLeastSquares.Fit(pairs.X.AsSpan(), pairs.Y.AsSpan(), 0.95).Value!;

        Close(expected["ols_residual"], fit.ResidualStandardDeviation);
        LineAssert.Agrees(expected, "ols_intercept", fit.Intercept);
        LineAssert.Agrees(expected, "ols_slope", fit.Slope);
    }

    [Fact]
    public void Two_pairs_are_too_few()
    {
        var answer = OrdinaryLeastSquares.Fit([1, 2], [1, 2], 0.95);

        Assert.Equal(AssumptionCode.TooFewValues, answer.NotComputable?.Code);
    }

    [Fact]
    public void Constant_baseline_has_no_line_even_when_its_mean_rounds()
    {
        double[] x = [0.1, 0.1, 0.1, 0.1, 0.1, 0.1];

        var answer = OrdinaryLeastSquares.Fit(x, [1, 2, 3, 4, 5, 6], 0.95);

        Assert.Equal(AssumptionCode.ConstantBaseline, answer.NotComputable?.Code);
    }

    [Fact]
    public void Exact_line_has_intervals_without_width()
    {
        var fit = OrdinaryLeastSquares.Fit([1, 2, 3, 4], [3, 5, 7, 9], 0.95).Value!;

        Assert.Equal(2, fit.Slope.Value);
        Assert.Equal(1, fit.Intercept.Value);
        Assert.Equal(0, fit.ResidualStandardDeviation);
        Assert.Equal(fit.Slope.Lower, fit.Slope.Upper);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e101)]
    public void Value_that_is_not_a_usable_number_throws(double value)
    {
        Assert.Throws<ArgumentException>(() =>
            OrdinaryLeastSquares.Fit([1, 2, value], [1, 2, 3], 0.95)
        );
        Assert.Throws<ArgumentException>(() =>
            OrdinaryLeastSquares.Fit([1, 2, 3], [1, value, 3], 0.95)
        );
    }

    [Fact]
    public void Lengths_differ_throws()
    {
        Assert.Throws<ArgumentException>(() => OrdinaryLeastSquares.Fit([1, 2, 3], [1, 2], 0.95));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Level_outside_zero_to_one_throws(double level)
    {
        Assert.Throws<ArgumentException>(() =>
            OrdinaryLeastSquares.Fit([1, 2, 3], [1, 2, 4], level)
        );
    }

    [Fact]
    public void Two_degrees_of_freedom_go_to_the_line()
    {
        double[] x = [1, 2, 3, 4, 5];
        double[] y = [1, 3, 2, 5, 4];

        Assert.Equal(3, OrdinaryLeastSquares.Fit(x, y, 0.95).Value!.DegreesOfFreedom);
        Assert.Equal(
            3,
            WeightedLeastSquares.Fit(x, y, [1, 2, 1, 2, 1], 0.95).Value!.DegreesOfFreedom
        );
    }

    /// <summary>With x counted from the level, the intercept is the value at the level.</summary>
    [Fact]
    public void Change_at_a_level_is_the_intercept_of_baselines_counted_from_it()
    {
        double[] x = [31.2, 40.5, 55.1, 62.0, 78.4, 90.3];
        double[] y = [30.9, 41.7, 54.0, 63.8, 80.1, 89.2];
        const double level = 60;

        var found = OrdinaryLeastSquares.BiasAt(x, y, level, 0.9).Value!;

        var counted = OrdinaryLeastSquares.Fit([.. x.Select(v => v - level)], y, 0.9).Value!;
        Close(counted.Intercept.Value, found.PredictedDelayed, 1e-12);
        Close(counted.Intercept.Value - level, found.Bias, 1e-12);
        Close(100 * found.Bias / level, found.BiasPercent, 1e-12);
        Close(counted.Intercept.StandardError, found.StandardError, 1e-12);
        Close(counted.Intercept.Lower - level, found.Lower, 1e-12);
        Close(counted.Intercept.Upper - level, found.Upper, 1e-12);
        Assert.Equal(
            AssumptionCode.ConstantBaseline,
            OrdinaryLeastSquares.BiasAt([1, 1, 1], [1, 2, 3], 1, 0.9).NotComputable!.Code
        );
        Assert.Throws<ArgumentException>(() => OrdinaryLeastSquares.BiasAt(x, y, 0, 0.9));
    }

    /// <summary>(1·2 + 2·3 + 3·7)/(1 + 4 + 9) = 29/14.</summary>
    [Fact]
    public void Slope_through_the_origin_is_the_sum_of_products_over_that_of_squares()
    {
        Close(29.0 / 14, OrdinaryLeastSquares.SlopeThroughOrigin([1, 2, 3], [2, 3, 7])!.Value);
        // NIST Statistical Reference Datasets, NoInt1: certified B1.
        Close(
            2.07438016528926,
            OrdinaryLeastSquares
                .SlopeThroughOrigin(
                    Column("published/nist_noint1.csv", 1),
                    Column("published/nist_noint1.csv", 0)
                )!
                .Value,
            1e-14
        );
        Assert.Null(OrdinaryLeastSquares.SlopeThroughOrigin([0, 0], [1, 2]));
        Assert.Null(OrdinaryLeastSquares.SlopeThroughOrigin([], []));
    }
}

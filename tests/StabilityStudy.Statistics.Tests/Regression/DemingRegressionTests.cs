using CsCheck;
using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class DemingRegressionTests
{
    /// <summary>Ten to twenty pairs above zero that rise together.</summary>
    private static readonly Gen<(double X, double Y)[]> Rising = Gen.Select(
            Gen.Double[10, 100],
            Gen.Double[-3, 3]
        )
        .Select((x, error) => (x, (1.1 * x) + 2 + error))
        .Array[10, 20];

    public static TheoryData<string, double> CasesAndRatios
    {
        get
        {
            var data = new TheoryData<string, double>();
            foreach (var name in Cases)
            {
                data.Add(name, 1);
                data.Add(name, 0.5);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(CasesAndRatios))]
    public void Both_fits_agree_with_R(string name, double ratio)
    {
        var expected = Expected("computed/regression_expected.csv", name);
        var x = Pairs(name).X.AsSpan();
        var y = Pairs(name).Y.AsSpan();
        var text = ratio == 1 ? "1" : "0.5";

        Agrees(expected, "deming_" + text, DemingRegression.Fit(x, y, ratio, 0.95).Value!);
        Agrees(
            expected,
            "weighted_" + text,
            WeightedDemingRegression.Fit(x, y, ratio, 0.95).Value!
        );
    }

    [Theory]
    [MemberData(nameof(CasesAndRatios))]
    public void Bias_at_a_level_agrees_with_R(string name, double ratio)
    {
        var expected = Expected("computed/regression_expected.csv", name);
        var x = Pairs(name).X.AsSpan();
        var y = Pairs(name).Y.AsSpan();
        var text = ratio == 1 ? "1" : "0.5";
        var level = expected["level"];

        var constant = DemingRegression.BiasAt(x, y, ratio, level, 0.95, []).Value!;
        var proportional = WeightedDemingRegression.BiasAt(x, y, ratio, level, 0.95, []).Value!;

        LineAssert.Agrees(expected, $"deming_{text}_bias", Interval(constant));
        LineAssert.Agrees(expected, $"weighted_{text}_bias", Interval(proportional));
        Close(level + constant.Bias, constant.PredictedDelayed);
        Close(100 * constant.Bias / level, constant.BiasPercent);
    }

    [Fact]
    public void Swapping_x_and_y_inverts_slope_and_ratio() =>
        Rising.Sample(
            pairs =>
            {
                var (x, y) = Split(pairs);
                var forward = DemingRegression.Fit(x, y, 0.4, 0.95).Value!;
                var backward = DemingRegression.Fit(y, x, 1 / 0.4, 0.95).Value!;
                Close(1, forward.Slope.Value * backward.Slope.Value);
                Close(-forward.Intercept.Value / forward.Slope.Value, backward.Intercept.Value);
                var weighted = WeightedDemingRegression.Fit(x, y, 0.4, 0.95).Value!;
                var weightedBack = WeightedDemingRegression.Fit(y, x, 1 / 0.4, 0.95).Value!;
                Close(1, weighted.Slope.Value * weightedBack.Slope.Value);
            },
            iter: 200
        );

    [Fact]
    public void Shift_of_y_shifts_the_intercept_only() =>
        Rising.Sample(
            pairs =>
            {
                var (x, y) = Split(pairs);
                var plain = DemingRegression.Fit(x, y, 2, 0.9).Value!;
                var shifted = DemingRegression.Fit(x, [.. y.Select(v => v + 50)], 2, 0.9).Value!;
                Close(plain.Slope.Value, shifted.Slope.Value);
                Close(plain.Slope.StandardError, shifted.Slope.StandardError);
                Close(plain.Intercept.Lower + 50, shifted.Intercept.Lower);
            },
            iter: 200
        );

    [Fact]
    public void Scale_of_both_scales_the_intercept_only() =>
        Rising.Sample(
            pairs =>
            {
                var (x, y) = Split(pairs);
                double[] wideX = [.. x.Select(v => v * 10)];
                double[] wideY = [.. y.Select(v => v * 10)];
                var plain = WeightedDemingRegression.Fit(x, y, 0.7, 0.9).Value!;
                var scaled = WeightedDemingRegression.Fit(wideX, wideY, 0.7, 0.9).Value!;
                Close(plain.Slope.Upper, scaled.Slope.Upper);
                Close(plain.Intercept.Upper * 10, scaled.Intercept.Upper);
                Close(plain.ResidualStandardDeviation, scaled.ResidualStandardDeviation);
                var deming = DemingRegression.Fit(x, y, 0.7, 0.9).Value!;
                Close(
                    deming.Slope.Upper,
                    DemingRegression.Fit(wideX, wideY, 0.7, 0.9).Value!.Slope.Upper
                );
            },
            iter: 200
        );

    [Fact]
    public void Order_of_the_pairs_does_not_matter() =>
        Rising.Sample(
            pairs =>
            {
                var (x, y) = Split(pairs);
                var (otherX, otherY) = Split([.. pairs.Reverse()]);
                Close(
                    WeightedDemingRegression.Fit(x, y, 1, 0.9).Value!.Slope.Lower,
                    WeightedDemingRegression.Fit(otherX, otherY, 1, 0.9).Value!.Slope.Lower
                );
                Close(
                    DemingRegression.Fit(x, y, 1, 0.9).Value!.Intercept.Lower,
                    DemingRegression.Fit(otherX, otherY, 1, 0.9).Value!.Intercept.Lower
                );
            },
            iter: 200
        );

    [Fact]
    public void Exact_x_approaches_ordinary_least_squares()
    {
        var pairs = Pairs("wide");

        var deming = DemingRegression.Fit(pairs.X.AsSpan(), pairs.Y.AsSpan(), 1e-9, 0.95).Value!;
        var ordinary = OrdinaryLeastSquares.Fit(pairs.X.AsSpan(), pairs.Y.AsSpan(), 0.95).Value!;

        Close(ordinary.Slope.Value, deming.Slope.Value, 1e-8);
    }

    [Fact]
    public void Falling_pairs_have_a_negative_slope()
    {
        var fit = DemingRegression.Fit([1, 2, 3, 4], [-2, -4, -6, -8], 1, 0.95).Value!;

        Close(-2, fit.Slope.Value, 1e-14);
    }

    [Fact]
    public void Input_is_not_written_to()
    {
        double[] x = [3, 1, 2, 5];
        double[] y = [2, 1, 4, 5];

        _ = DemingRegression.Fit(x, y, 1, 0.95);
        _ = WeightedDemingRegression.Fit(x, y, 1, 0.95);

        Assert.Equal([3, 1, 2, 5], x);
        Assert.Equal([2, 1, 4, 5], y);
    }

    [Fact]
    public void Two_pairs_are_too_few()
    {
        Assert.Equal(
            AssumptionCode.TooFewValues,
            DemingRegression.Fit([1, 2], [1, 2], 1, 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.TooFewValues,
            WeightedDemingRegression.BiasAt([1, 2], [1, 2], 1, 1, 0.95, []).NotComputable?.Code
        );
    }

    [Fact]
    public void Three_pairs_are_enough()
    {
        var fit = DemingRegression.Fit([1, 2, 3], [1, 2.5, 3], 1, 0.95).Value!;

        Assert.Equal(1, fit.DegreesOfFreedom);
    }

    [Fact]
    public void Constant_baseline_is_refused_also_when_it_arises_with_a_pair_left_out()
    {
        var all = DemingRegression.Fit([2, 2, 2, 2], [1, 2, 3, 4], 1, 0.95);
        var one = WeightedDemingRegression.Fit([2, 2, 2, 3], [1, 2, 3, 4], 1, 0.95);

        Assert.Equal(AssumptionCode.ConstantBaseline, all.NotComputable?.Code);
        Assert.Equal(AssumptionCode.ConstantBaseline, one.NotComputable?.Code);
        Assert.Equal(new OmittedPairs(4, 4), one.NotComputable?.Omitted);
    }

    [Fact]
    public void Values_that_do_not_vary_together_and_spread_more_in_y_are_vertical()
    {
        var answer = DemingRegression.Fit([-1, -1, 1, 1], [-5, 5, -5, 5], 1, 0.95);

        Assert.Equal(AssumptionCode.InfiniteSlope, answer.NotComputable?.Code);
    }

    [Fact]
    public void Weights_that_do_not_settle_are_reported_not_returned()
    {
        double[] x = [10, 3, 9, 6, 3, 4];
        double[] y = [6, 5, 11, 1, 6, 4];

        var answer = WeightedDemingRegression.Fit(x, y, 1, 0.95);

        Assert.Equal(AssumptionCode.NoConvergence, answer.NotComputable?.Code);
    }

    [Fact]
    public void Estimated_level_not_above_zero_is_refused()
    {
        double[] x = [8, 20, 65, 2, 2];
        double[] y = [10, 129, 1, 227, 169];

        var answer = WeightedDemingRegression.Fit(x, y, 1, 0.95);

        Assert.Equal(AssumptionCode.ValueNotPositive, answer.NotComputable?.Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Weighted_fit_refuses_values_not_above_zero(double value)
    {
        Assert.Equal(
            AssumptionCode.ValueNotPositive,
            WeightedDemingRegression.Fit([1, 2, value], [1, 2, 3], 1, 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.ValueNotPositive,
            WeightedDemingRegression.Fit([1, 2, 3], [value, 2, 3], 1, 0.95).NotComputable?.Code
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Ratio_or_level_not_above_zero_throws(double value)
    {
        Assert.Throws<ArgumentException>(() =>
            DemingRegression.Fit([1, 2, 3], [1, 2, 4], value, 0.95)
        );
        Assert.Throws<ArgumentException>(() =>
            WeightedDemingRegression.Fit([1, 2, 3], [1, 2, 4], value, 0.95)
        );
        Assert.Throws<ArgumentException>(() =>
            DemingRegression.BiasAt([1, 2, 3], [1, 2, 4], 1, value, 0.95, [])
        );
    }

    private static void Agrees(Dictionary<string, double> expected, string prefix, LineFit fit)
    {
        LineAssert.Agrees(expected, prefix + "_intercept", fit.Intercept);
        LineAssert.Agrees(expected, prefix + "_slope", fit.Slope);
        Close(expected[prefix + "_residual"], fit.ResidualStandardDeviation);
    }

    private static CoefficientInterval Interval(BiasAtLevel bias) =>
        new(bias.Bias, bias.StandardError, bias.Lower, bias.Upper);

    private static (double[] X, double[] Y) Split((double X, double Y)[] pairs) =>
        ([.. pairs.Select(pair => pair.X)], [.. pairs.Select(pair => pair.Y)]);

    [Fact]
    public void More_than_five_thousand_pairs_are_too_many_to_leave_each_out()
    {
        double[] values = [.. Enumerable.Range(1, 5001).Select(i => (double)i)];

        Computed.Refusal(
            AssumptionCode.TooManyValues,
            DemingRegression.Fit(values, values, 1, 0.95)
        );
        Computed.Refusal(
            AssumptionCode.TooManyValues,
            WeightedDemingRegression.BiasAt(values, values, 1, 50, 0.95, [])
        );
    }

    /// <summary>Σ(x − x̄)(y − ȳ) is zero in decimals and 10⁻¹⁷ in doubles.</summary>
    [Fact]
    public void Values_that_do_not_vary_together_have_no_slope_whatever_rounding_leaves() =>
        Assert.Equal(
            AssumptionCode.InfiniteSlope,
            DemingRegression.Fit([0.1, 0.2, 0.3], [0.3, 0.9, 0.3], 1, 0.95).NotComputable?.Code
        );
}

using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Tests.Regression;

public sealed class WeightedLeastSquaresTests
{
    private static readonly double[] s_x = [1, 2, 4, 7, 9];
    private static readonly double[] s_y = [1.5, 2, 4.5, 7, 8];

    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/weighted_least_squares.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var pairs = RegressionReference.Pairs(table.Text(row, "case"));
            var fit = Computed.Value(
                WeightedLeastSquares.Fit(
                    pairs.X.AsSpan(),
                    pairs.Y.AsSpan(),
                    [.. pairs.X.Select(x => 1 / (x * x))],
                    0.95
                )
            );

            Agrees("intercept", fit.Intercept);
            Agrees("slope", fit.Slope);
            Close.Relative(table.Number(row, "residual"), fit.ResidualStandardDeviation, 1e-10);

            void Agrees(string name, CoefficientInterval found)
            {
                Close.Relative(table.Number(row, name), found.Value, 1e-9);
                Close.Relative(table.Number(row, name + "_se"), found.StandardError, 1e-9);
                Close.Relative(table.Number(row, name + "_lower"), found.Lower, 1e-9);
                Close.Relative(table.Number(row, name + "_upper"), found.Upper, 1e-9);
            }
        }
    }

    [Fact]
    public void Equal_weights_give_the_ordinary_line_whatever_their_size()
    {
        var ordinary = Computed.Value(OrdinaryLeastSquares.Fit(s_x, s_y, 0.95));
        var weighted = Computed.Value(WeightedLeastSquares.Fit(s_x, s_y, [4, 4, 4, 4, 4], 0.95));

        Close.Relative(ordinary.Slope.Value, weighted.Slope.Value, 1e-13);
        Close.Relative(ordinary.Slope.StandardError, weighted.Slope.StandardError, 1e-13);
        Close.Relative(ordinary.Intercept.Lower, weighted.Intercept.Lower, 1e-12);
        Close.Relative(
            2 * ordinary.ResidualStandardDeviation,
            weighted.ResidualStandardDeviation,
            1e-13
        );
    }

    [Fact]
    public void A_pair_of_almost_no_weight_does_not_count_for_the_line()
    {
        var without = Computed.Value(OrdinaryLeastSquares.Fit(s_x, s_y, 0.95));
        var with = Computed.Value(
            WeightedLeastSquares.Fit([.. s_x, 5], [.. s_y, 1000], [1, 1, 1, 1, 1, 1e-15], 0.95)
        );

        Close.Relative(without.Slope.Value, with.Slope.Value, 1e-9);
    }

    [Fact]
    public void Arguments_out_of_range_throw_and_data_without_a_line_are_refused()
    {
        Assert.Throws<ArgumentException>(
            "weights",
            () => WeightedLeastSquares.Fit([1, 2, 3], [1, 2, 3], [1, 1], 0.95)
        );
        Assert.Throws<ArgumentException>(
            "weights",
            () => WeightedLeastSquares.Fit([1, 2, 3], [1, 2, 3], [1, 0, 1], 0.95)
        );
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            WeightedLeastSquares.Fit([1, 2], [1, 2], [1, 1], 0.95)
        );
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            WeightedLeastSquares.Fit([1, 1, 1], [1, 2, 3], [1, 1, 1], 0.95)
        );
    }
}

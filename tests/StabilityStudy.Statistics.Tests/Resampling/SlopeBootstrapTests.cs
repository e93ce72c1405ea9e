using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;
using StabilityStudy.Statistics.Tests.Regression;

namespace StabilityStudy.Statistics.Tests.Resampling;

public sealed class SlopeBootstrapTests
{
    [Fact]
    public void Agrees_with_Python_on_the_same_draws()
    {
        var table = ReferenceTable.Read("computed/slope_bootstrap.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var pairs = RegressionReference.Pairs(table.Text(row, "case"));
            var found = Computed.Value(
                SlopeBootstrap.Deming(
                    pairs.X.AsSpan(),
                    pairs.Y.AsSpan(),
                    table.Number(row, "ratio"),
                    table.Number(row, "level"),
                    table.Whole(row, "replicates"),
                    ulong.Parse(table.Text(row, "seed"), CultureInfo.InvariantCulture)
                )
            );

            Close.Relative(table.Number(row, "slope"), found.Value, 1e-12);
            Close.Relative(table.Number(row, "lower"), found.Lower, 1e-9);
            Close.Relative(table.Number(row, "upper"), found.Upper, 1e-9);
            Close.Absolute(table.Number(row, "z0"), found.BiasCorrection, 1e-10);
            Close.Absolute(table.Number(row, "a"), found.Acceleration, 1e-10);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_interval_and_another_seed_another()
    {
        var pairs = RegressionReference.Pairs("wide");
        var first = Of(7);

        Assert.Equal(first, Of(7));
        Assert.NotEqual(first.Lower, Of(8).Lower);

        SlopeBootstrapInterval Of(ulong seed) =>
            Computed.Value(
                SlopeBootstrap.Deming(pairs.X.AsSpan(), pairs.Y.AsSpan(), 1, 0.95, 400, seed)
            );
    }

    [Fact]
    public void Interval_covers_the_true_slope_nearly_as_often_as_stated()
    {
        const int samples = 400;
        var random = new SeededRandom(20240820);
        var missed = 0;
        var x = new double[40];
        var y = new double[40];
        for (var sample = 0; sample < samples; sample++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var truth = 20 + (40 * random.NextDouble());
                x[i] = truth + random.NextNormal();
                y[i] = truth + random.NextNormal();
            }

            var found = Computed.Value(SlopeBootstrap.Deming(x, y, 1, 0.9, 400, (ulong)sample));
            missed += found.Lower > 1 || found.Upper < 1 ? 1 : 0;
        }

        // Four binomial standard errors of 0.1 in 400 samples are 0.06; 40 pairs and 400 draws miss a little more.
        Assert.InRange((double)missed / samples, 0.1 - 0.06, 0.1 + 0.08);
    }

    [Fact]
    public void Draws_without_a_line_are_drawn_again_and_counted()
    {
        // All four draws hit one x with probability 2/2⁴: of 200 draws about 29 are repeated.
        var four = Computed.Value(
            SlopeBootstrap.Deming([1, 1, 2, 2], [1, 1.2, 2, 2.3], 1, 0.9, 200, 5)
        );
        Assert.InRange(four.Redrawn, 5, 80);
    }

    [Fact]
    public void Pairs_that_give_no_line_without_one_of_them_are_refused() =>
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            SlopeBootstrap.Deming([1, 1, 1, 2], [1, 1.1, 0.9, 2], 1, 0.9, 200, 5)
        );

    [Fact]
    public void An_exact_line_has_an_interval_without_width()
    {
        var found = Computed.Value(
            SlopeBootstrap.Deming([1, 2, 3, 4, 5, 6], [2, 4, 6, 8, 10, 12], 1, 0.9, 200, 5)
        );

        Close.Relative(2, found.Lower, 1e-12);
        Close.Relative(2, found.Upper, 1e-12);
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.ThrowsAny<ArgumentException>(() =>
            SlopeBootstrap.Deming([1, 2, 3, 4], [1, 2, 3], 1, 0.9, 200, 1)
        );
        Assert.ThrowsAny<ArgumentException>(() =>
            SlopeBootstrap.Deming([1, double.NaN, 3], [1, 2, 3], 1, 0.9, 200, 1)
        );
        Assert.Throws<ArgumentException>(
            "replicates",
            () => SlopeBootstrap.Deming([1, 2, 3], [1, 2, 3], 1, 0.9, 199, 1)
        );
        Assert.Throws<ArgumentException>(
            "errorVarianceRatio",
            () => SlopeBootstrap.Deming([1, 2, 3], [1, 2, 3], 0, 0.9, 200, 1)
        );
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => SlopeBootstrap.Deming([1, 2, 3], [1, 2, 3], 1, 1, 200, 1)
        );
    }
}

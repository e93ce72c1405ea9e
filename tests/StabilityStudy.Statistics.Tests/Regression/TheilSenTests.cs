using CsCheck;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

public sealed class TheilSenTests
{
    private static readonly Gen<(int X, int Y)[]> s_points = Gen.Select(
        Gen.Int[0, 40],
        Gen.Int[-30, 30]
    ).Array[6, 25];

    [Fact]
    public void Sens_data_of_1968_give_the_printed_line()
    {
        var table = ReferenceTable.Read("published/sen1968_theil_sen.csv");
        var pairs = ExactPairs.Create(
            [.. Enumerable.Range(0, table.Count).Select(i => table.Exact(i, "x"))],
            [.. Enumerable.Range(0, table.Count).Select(i => table.Exact(i, "y"))]
        );

        // The printed interval has a confidence of 93 %.
        var fit = Computed.Value(TheilSen.Fit(pairs, 0.93));

        Assert.Equal((4.0, 6.0), (fit.Slope, fit.Intercept));
        Close.Relative(26 / 7.0, fit.SlopeLower, 1e-15);
        Close.Relative(35 / 8.0, fit.SlopeUpper, 1e-15);
    }

    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/theil_sen.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var fit = Computed.Value(
                TheilSen.Fit(RegressionReference.Pairs(table.Text(row, "case")), 0.95)
            );

            Assert.Equal(table.Whole(row, "slopes"), fit.SlopeCount);
            Close.Relative(table.Number(row, "slope"), fit.Slope, 1e-12);
            Close.Relative(table.Number(row, "lower"), fit.SlopeLower, 1e-12);
            Close.Relative(table.Number(row, "upper"), fit.SlopeUpper, 1e-12);
            Close.Absolute(table.Number(row, "intercept"), fit.Intercept, 1e-10);
        }
    }

    /// <summary>Ranks from the variance (n(n − 1)(2n + 5) − Σ t(t − 1)(2t + 5))/18 over groups of t equal x, by hand: three groups of ten.</summary>
    [Fact]
    public void Ties_in_x_narrow_the_interval_as_the_variance_with_ties_says()
    {
        var random = new SeededRandom(7);
        decimal[] x = [.. Enumerable.Range(0, 30).Select(i => (decimal)(10 * (i % 3)))];
        decimal[] y = [.. x.Select(value => value + Math.Round((decimal)random.NextNormal(), 3))];
        double[] slopes =
        [
            .. (
                from i in Enumerable.Range(0, 30)
                from j in Enumerable.Range(i + 1, 29 - i)
                where x[i] != x[j]
                select (double)((y[j] - y[i]) / (x[j] - x[i]))
            ).Order(),
        ];
        var variance = ((30 * 29 * 65) - (3 * 10 * 9 * 25)) / 18.0;
        var rank = (int)Math.Floor(((slopes.Length - (1.959964 * Math.Sqrt(variance))) / 2) + 0.5);

        var fit = Computed.Value(TheilSen.Fit(ExactPairs.Create(x, y), 0.95));

        Assert.Equal(300, slopes.Length);
        Close.Absolute(slopes[rank - 1], fit.SlopeLower, 1e-12);
        Close.Absolute(slopes[slopes.Length - rank], fit.SlopeUpper, 1e-12);
    }

    [Fact]
    public void Powers_of_ten_and_the_order_of_the_pairs_change_nothing() =>
        s_points.Sample(points =>
        {
            var plain = TheilSen.Fit(Pairs(points, 1), 0.9);
            var tenth = TheilSen.Fit(Pairs(points, 0.1m), 0.9);
            var reversed = TheilSen.Fit(Pairs([.. points.Reverse()], 1), 0.9);

            Assert.Equal(plain.NotComputable, tenth.NotComputable);
            Assert.Equal(plain.Value, reversed.Value);
            Assert.Equal(
                (plain.Value?.Slope, plain.Value?.SlopeLower, plain.Value?.SlopeUpper),
                (tenth.Value?.Slope, tenth.Value?.SlopeLower, tenth.Value?.SlopeUpper)
            );
        });

    [Fact]
    public void Adding_a_line_to_y_adds_its_slope() =>
        s_points.Sample(points =>
        {
            var plain = TheilSen.Fit(Pairs(points, 1), 0.9);
            var tilted = TheilSen.Fit(
                Pairs([.. points.Select(p => (p.X, p.Y + (3 * p.X) - 5))], 1),
                0.9
            );

            Assert.Equal(plain.Value is null, tilted.Value is null);
            if (plain.Value is { } before && tilted.Value is { } after)
            {
                Close.Absolute(before.Slope + 3, after.Slope, 1e-9);
                Close.Absolute(before.SlopeLower + 3, after.SlopeLower, 1e-9);
                Close.Absolute(before.Intercept - 5, after.Intercept, 1e-7);
            }
        });

    [Fact]
    public void One_outlier_hardly_moves_the_line()
    {
        (int X, int Y)[] points = [.. Enumerable.Range(1, 20).Select(i => (i, 2 * i))];
        points[19].Y = 100_000;

        Assert.Equal(2, Computed.Value(TheilSen.Fit(Pairs(points, 1), 0.95)).Slope);
    }

    [Fact]
    public void Data_that_give_no_line_are_refused()
    {
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            TheilSen.Fit(ExactPairs.Create([1, 2], [1, 2]), 0.95)
        );
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            TheilSen.Fit(ExactPairs.Create([1, 1, 1], [1, 2, 3]), 0.95)
        );
        // Slopes 1, 3 and 2; y − 2x: 0, −1, 0.
        var three = TheilSen.Fit(ExactPairs.Create([1, 2, 3], [2, 3, 6]), 0.95);
        Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, three);
        Assert.Equal(new PointEstimate(2, 0), three.NotComputable!.Point);
    }

    /// <summary>Two hundred million slopes, of which only a few are ever formed.</summary>
    [Fact]
    public void Many_pairs_need_little_memory()
    {
        var x = Enumerable.Range(0, 20_001).Select(i => (decimal)i).ToArray();
        var y = x.Select((value, i) => (2 * value) + ((i * 7919 % 101) - 50)).ToArray();

        var fit = Computed.Value(TheilSen.Fit(ExactPairs.Create(x, y), 0.95));

        Assert.Equal(20_001L * 20_000 / 2, fit.SlopeCount);
        Assert.InRange(fit.SlopeLower, 1.999, fit.Slope);
        Assert.InRange(fit.SlopeUpper, fit.Slope, 2.001);
    }

    private static ExactPairs Pairs((int X, int Y)[] points, decimal unit) =>
        ExactPairs.Create([.. points.Select(p => p.X * unit)], [.. points.Select(p => p.Y * unit)]);
}

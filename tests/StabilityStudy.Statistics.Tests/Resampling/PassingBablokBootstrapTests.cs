using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;
using StabilityStudy.Statistics.Tests.Regression;

namespace StabilityStudy.Statistics.Tests.Resampling;

[Trait("lane", "slow")]
public sealed class PassingBablokBootstrapTests
{
    [Fact]
    public void Agrees_with_Python_on_the_same_draws_each_fitted_from_all_its_slopes()
    {
        var table = ReferenceTable.Read("computed/passing_bablok_bootstrap.csv");
        Assert.Equal(6, table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var found = Computed.Value(
                Assert.Single(
                    PassingBablokBootstrap.BiasAt(
                        RegressionReference.Pairs(table.Text(row, "case")),
                        [table.Number(row, "at")],
                        table.Number(row, "level"),
                        table.Whole(row, "replicates"),
                        ulong.Parse(table.Text(row, "seed"), CultureInfo.InvariantCulture)
                    )
                )
            );

            Close.Absolute(table.Number(row, "bias"), found.Bias, 1e-12);
            Close.Absolute(table.Number(row, "lower"), found.Lower, 1e-9);
            Close.Absolute(table.Number(row, "upper"), found.Upper, 1e-9);
            Close.Absolute(table.Number(row, "z0"), found.BiasCorrection, 1e-10);
            Close.Absolute(table.Number(row, "a"), found.Acceleration, 1e-9);
            Assert.Equal(table.Whole(row, "redrawn"), found.Redrawn);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_interval_whatever_the_levels_beside_it()
    {
        var pairs = RegressionReference.Pairs("wide");
        var both = PassingBablokBootstrap.BiasAt(pairs, [30, 50], 0.9, 300, 5);

        Assert.Equal(both[1], PassingBablokBootstrap.BiasAt(pairs, [50], 0.9, 300, 5)[0]);
        Assert.NotEqual(both[1], PassingBablokBootstrap.BiasAt(pairs, [50], 0.9, 300, 6)[0]);
    }

    [Fact]
    public void Interval_in_the_middle_of_the_baselines_misses_about_as_often_as_stated()
    {
        const int studies = 300;
        var random = new SeededRandom(20251126);
        var missed = 0;
        for (var study = 0; study < studies; study++)
        {
            decimal[] truth =
            [
                .. Enumerable.Range(0, 40).Select(_ => Rounded(30 + (30 * random.NextDouble()))),
            ];
            var pairs = ExactPairs.Create(
                [.. truth.Select(value => Rounded((double)value + random.NextNormal()))],
                [.. truth.Select(value => Rounded((1.04 * (double)value) + random.NextNormal()))]
            );
            var found = Computed.Value(
                PassingBablokBootstrap.BiasAt(pairs, [45], 0.9, 400, (ulong)study)[0]
            );
            missed += found.Lower > 1.8 || found.Upper < 1.8 ? 1 : 0;
        }

        // Four binomial standard errors of 0.1 in 300 studies are 0.07.
        Assert.InRange((double)missed / studies, 0.1 - 0.07, 0.1 + 0.07);

        static decimal Rounded(double value) => Math.Round((decimal)value, 1);
    }

    [Fact]
    public void Says_why_there_is_no_bias()
    {
        var falling = ExactPairs.Create([1, 2, 3, 4, 5, 6], [6, 5, 4, 3, 2, 1.5m]);
        Computed.Refusal(
            AssumptionCode.NoPositiveAssociation,
            PassingBablokBootstrap.BiasAt(falling, [3], 0.9, 200, 1)[0]
        );
        decimal[] many = [.. Enumerable.Range(1, 1001).Select(i => (decimal)i)];
        Computed.Refusal(
            AssumptionCode.TooManyValues,
            PassingBablokBootstrap.BiasAt(ExactPairs.Create(many, many), [3], 0.9, 200, 1)[0]
        );
        Assert.Throws<ArgumentException>(() =>
            PassingBablokBootstrap.BiasAt(falling, [0], 0.9, 200, 1)
        );
        Assert.Throws<ArgumentException>(() =>
            PassingBablokBootstrap.BiasAt(falling, [3], 0.9, 199, 1)
        );
    }

    [Fact]
    public void Pairs_that_give_no_line_without_one_of_them_are_refused()
    {
        // Between five pairs at one baseline and three at another are 15 slopes against 13 vertical ones; with two in place of three 10 against 11.
        var pairs = ExactPairs.Create(
            [1, 1, 1, 1, 1, 2, 2, 2],
            [1, 1.1m, 1.2m, 1.3m, 1.4m, 2, 2.2m, 2.4m]
        );

        Computed.Value(PassingBablok.Fit(pairs, 0.01));
        Computed.Refusal(
            AssumptionCode.InfiniteSlope,
            PassingBablokBootstrap.BiasAt(pairs, [1], 0.01, 200, 1)[0]
        );
    }

    [Fact]
    public void Draws_without_a_line_are_drawn_again_and_counted()
    {
        // Four pairs at each of two baselines: draws with most pairs at one of them have a vertical line in the middle.
        var found = Computed.Value(
            PassingBablokBootstrap.BiasAt(
                ExactPairs.Create(
                    [1, 1, 1, 1, 2, 2, 2, 2],
                    [1, 1.1m, 1.2m, 1.3m, 2, 2.2m, 2.3m, 2.4m]
                ),
                [1.5],
                0.01,
                200,
                5
            )[0]
        );

        Assert.InRange(found.Redrawn, 10, 400);
    }

    [Fact]
    public void A_thousand_pairs_are_not_too_many()
    {
        decimal[] x = [.. Enumerable.Range(1, 1000).Select(i => (decimal)i)];
        decimal[] y = [.. x.Select(value => value + (value % 7))];

        var found = Computed.Value(
            PassingBablokBootstrap.BiasAt(ExactPairs.Create(x, y), [500], 0.9, 200, 1)[0]
        );

        Assert.InRange(found.Bias, found.Lower, found.Upper);
        Close.Absolute(3, found.Bias, 0.1);
    }

    [Fact]
    public void No_level_gives_no_bias_and_no_pairs_are_the_callers_mistake()
    {
        var pairs = RegressionReference.Pairs("wide");

        Assert.Empty(PassingBablokBootstrap.BiasAt(pairs, [], 0.9, 200, 1));
        Assert.Throws<ArgumentNullException>(
            "pairs",
            () => PassingBablokBootstrap.BiasAt(null!, [], 0.9, 200, 1)
        );
    }
}

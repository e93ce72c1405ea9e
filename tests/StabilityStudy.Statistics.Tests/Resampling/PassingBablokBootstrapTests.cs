using System.Globalization;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;
using StabilityStudy.Statistics.Tests.Regression;

namespace StabilityStudy.Statistics.Tests.Resampling;

public sealed class PassingBablokBootstrapTests
{
    [Fact]
    public void Agrees_with_Python_on_the_same_draws_each_fitted_from_all_its_slopes()
    {
        var table = ReferenceTable.Read("computed/passing_bablok_bootstrap.csv");
        Assert.Equal(4, table.Count);
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

    /// <summary>Few different numbers, so that vertical slopes, slopes of −1, ties and samples without a line are frequent.</summary>
    [Fact]
    public void Line_of_a_sample_is_that_of_its_pairs_written_out()
    {
        var random = new SeededRandom(1983);
        var (lines, none) = (0, 0);
        for (var trial = 0; trial < 3000; trial++)
        {
            var n = 2 + (int)(random.NextDouble() * 8);
            decimal[] x = [.. Enumerable.Range(0, n).Select(_ => Whole(6))];
            decimal[] y = [.. x.Select(value => value + Whole(4) - 2)];
            int[] sample = [.. Enumerable.Range(0, n).Select(_ => Whole(n))];
            var drawn = ExactPairs.Create(
                [.. sample.Select(pair => x[pair])],
                [.. sample.Select(pair => y[pair])]
            );
            var expected = OfAllSlopes(drawn);
            var found = new WeightedSlopes(ExactPairs.Create(x, y)).LineOf(sample);

            Assert.Equal(expected is null, found is null);
            if (found is null)
            {
                none++;
                continue;
            }

            lines++;
            Close.Absolute(expected!.Slope, found.Slope, 1e-14);
            Close.Absolute(expected.Intercept, found.Intercept, 1e-12);
        }

        Assert.True(lines > 2000 && none > 100);

        int Whole(int below) => (int)(random.NextDouble() * below);
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

    private static Line? OfAllSlopes(ExactPairs pairs)
    {
        var finite = new List<double>();
        var (vertical, below) = (0, 0);
        for (var i = 0; i < pairs.Count; i++)
        {
            for (var j = i + 1; j < pairs.Count; j++)
            {
                var (run, rise) = (pairs.X[j] - pairs.X[i], pairs.Y[j] - pairs.Y[i]);
                if (run == 0)
                {
                    vertical += rise == 0 ? 0 : 1;
                }
                else if (rise != -run)
                {
                    finite.Add(rise / run);
                    below += rise / run < -1 ? 1 : 0;
                }
            }
        }

        var count = finite.Count + vertical;
        finite.Sort();
        var upper = (count / 2) + below;
        if (count == 0 || upper >= finite.Count)
        {
            return null;
        }

        var slope = (finite[((count + 1) / 2) + below - 1] + finite[upper]) / 2;
        double[] intercepts = [.. pairs.X.Zip(pairs.Y, (x, y) => y - (slope * x)).Order()];
        var n = intercepts.Length;
        return new Line((intercepts[(n - 1) / 2] + intercepts[n / 2]) / 2, slope);
    }
}

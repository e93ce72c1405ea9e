using CsCheck;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class HodgesLehmannTests
{
    [Fact]
    public void Depression_scores_give_the_published_estimate_and_interval()
    {
        // Hollander and Wolfe (1973): pseudomedian 0.46 as a decrease, interval 0.010 to 0.786 between the 6th and 40th averages.
        var table = ReferenceTable.Read("published/hollander_wolfe_depression.csv");
        var pairs = ExactPairs.Create(
            [.. Enumerable.Range(0, table.Count).Select(row => table.Exact(row, "second"))],
            [.. Enumerable.Range(0, table.Count).Select(row => table.Exact(row, "first"))]
        );

        var interval = Computed.Value(HodgesLehmann.WithInterval(pairs.Difference.AsSpan(), 0.95));

        Close.Absolute(0.46, interval.Value, 1e-12);
        Close.Absolute(0.010, interval.Lower, 1e-12);
        Close.Absolute(0.786, interval.Upper, 1e-12);
        Assert.Equal(6, interval.LowerRank);
        Close.Absolute(0.9609375, interval.AchievedConfidence, 1e-15);
    }

    [Fact]
    public void Ranks_and_levels_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/interval_ranks.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var values = Enumerable
                .Range(1, table.Whole(row, "n"))
                .Select(i => (double)i)
                .ToArray();
            var rank = table.Whole(row, "hl_rank");
            if (values.Length > SignedRankDistribution.LargestExact)
            {
                continue;
            }

            var estimate = HodgesLehmann.WithInterval(values, table.Number(row, "level"));

            if (rank == 0)
            {
                Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, estimate);
                continue;
            }

            var interval = Computed.Value(estimate);
            Assert.Equal(rank, interval.LowerRank);
            Close.Absolute(table.Number(row, "hl_level"), interval.AchievedConfidence, 1e-12);
            Assert.Empty(estimate.Notes);
        }
    }

    [Fact]
    public void Walsh_averages_of_small_samples_agree_with_listing_them_all() =>
        Gen.Double[-10, 10]
            .Select(v => Math.Round(v, 1))
            .Array[1, 12]
            .Sample(values =>
            {
                var all = (
                    from i in Enumerable.Range(0, values.Length)
                    from j in Enumerable.Range(i, values.Length - i)
                    select (values[i] / 2) + (values[j] / 2)
                )
                    .Order()
                    .ToArray();

                var averages = new WalshAverages(values);

                Assert.Equal(all.Length, averages.Count);
                Assert.Equal(all, Enumerable.Range(1, all.Length).Select(r => averages.OfRank(r)));
                Assert.Equal(
                    (all[(all.Length - 1) / 2] / 2) + (all[all.Length / 2] / 2),
                    averages.Median
                );
            });

    [Fact]
    public void Signed_ranks_of_small_samples_agree_with_all_sign_patterns()
    {
        for (var n = 1; n <= 12; n++)
        {
            var sums = Enumerable
                .Range(0, 1 << n)
                .Select(signs => Enumerable.Range(1, n).Sum(r => (signs >> (r - 1) & 1) * r))
                .ToArray();
            foreach (var tail in new[] { 0.005, 0.025, 0.05, 0.2, 0.49 })
            {
                var rank = Enumerable
                    .Range(0, sums.Length)
                    .First(q => sums.Count(v => v <= q) >= tail * sums.Length);
                var below = (double)sums.Count(v => v < rank) / sums.Length;

                Assert.Equal((rank, below), SignedRankDistribution.Rank(n, tail));
            }
        }
    }

    [Fact]
    public void The_approximate_rank_is_next_to_the_exact_one_of_R()
    {
        // The normal tail is off by 1.4e-5 here, which is two ranks of about 230,000.
        var table = ReferenceTable.Read("computed/interval_ranks.csv");
        var row = Enumerable
            .Range(0, table.Count)
            .Single(r => table.Whole(r, "n") > SignedRankDistribution.LargestExact);

        var (rank, below) = SignedRankDistribution.Rank(table.Whole(row, "n"), 0.025);

        Assert.InRange(table.Whole(row, "hl_rank") - rank, 0, 3);
        Close.Absolute(table.Number(row, "hl_level"), 1 - (2 * below), 5e-5);
    }

    [Fact]
    public void More_than_a_thousand_values_carry_a_remark()
    {
        var values = Enumerable.Range(1, 1001).Select(i => (double)i).ToArray();

        var estimate = HodgesLehmann.WithInterval(values, 0.95);

        Assert.Equal(AssumptionCode.ApproximateRank, Assert.Single(estimate.Notes).Code);
        Assert.Equal(501, Computed.Value(estimate).Value);
    }

    [Fact]
    public void Values_with_too_many_averages_have_a_point_estimate_only()
    {
        var values = Enumerable.Range(1, 65_536).Select(i => (double)i).ToArray();

        Computed.Refusal(
            AssumptionCode.NoIntervalAtThisSize,
            HodgesLehmann.WithInterval(values, 0.95)
        );
        Assert.Equal(32_768.5, Computed.Value(HodgesLehmann.Point(values)).Value);
        var interval = Computed.Value(HodgesLehmann.WithInterval(values.AsSpan(1), 0.95));
        Assert.InRange(interval.LowerRank, 1_060_000_000, int.MaxValue);
        Assert.True(interval.Lower < interval.Value && interval.Value < interval.Upper);
    }

    [Fact]
    public void Level_is_never_lowered_when_there_is_no_interval()
    {
        double[] five = [1, 2, 3, 4, 5];

        Computed.Refusal(
            AssumptionCode.NoIntervalAtThisSize,
            HodgesLehmann.WithInterval(five, 0.95)
        );
        Assert.Equal(new PointValue(5, 3), Computed.Value(HodgesLehmann.Point(five)));
    }

    [Fact]
    public void Point_estimate_needs_one_value()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, HodgesLehmann.Point([]));
        Computed.Refusal(AssumptionCode.TooFewValues, HodgesLehmann.WithInterval([], 0.9));
        Assert.Equal(-0.5, Computed.Value(HodgesLehmann.Point([-0.5])).Value);
    }

    [Theory]
    [InlineData(1e300)]
    [InlineData(1e-300)]
    [InlineData(-1)]
    public void Huge_tiny_and_constant_values_are_no_trouble(double unit)
    {
        double[] values = [unit, unit, unit, unit, unit, unit, unit];

        var interval = Computed.Value(HodgesLehmann.WithInterval(values, 0.95));

        Assert.Equal((unit, unit, unit), (interval.Lower, interval.Value, interval.Upper));
    }

    [Fact]
    public void Input_is_left_as_it_was()
    {
        double[] values = [3, 1, 2, 9, 7, 8];

        HodgesLehmann.WithInterval(values, 0.9);
        HodgesLehmann.Point(values);

        Assert.Equal([3, 1, 2, 9, 7, 8], values);
    }

    [Fact]
    public void Heavy_tailed_samples_are_covered_as_often_as_achieved()
    {
        const int repetitions = 3000;
        var random = new SeededRandom(3);
        var values = new double[12];
        var covered = 0;
        var achieved = 0.0;
        for (var i = 0; i < repetitions; i++)
        {
            for (var j = 0; j < values.Length; j++)
            {
                values[j] = Math.Tan(Math.PI * (random.NextDouble() - 0.5));
            }

            var interval = Computed.Value(HodgesLehmann.WithInterval(values, 0.9));
            achieved = interval.AchievedConfidence;
            covered += interval.Lower < 0 && 0 < interval.Upper ? 1 : 0;
        }

        Close.Absolute(
            achieved,
            (double)covered / repetitions,
            3.5 * Math.Sqrt(achieved * (1 - achieved) / repetitions)
        );
    }
}

using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class MedianTests
{
    [Fact]
    public void Ranks_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/interval_ranks.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var values = Enumerable
                .Range(1, table.Whole(row, "n"))
                .Select(i => (double)i)
                .ToArray();
            var level = table.Number(row, "level");
            var rank = table.Whole(row, "median_rank");

            var estimate = Median.WithInterval(values, level);

            if (rank == 0)
            {
                Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, estimate);
                continue;
            }

            var interval = Computed.Value(estimate);
            Assert.Equal((rank, rank), (interval.LowerRank, (int)interval.Lower));
            Assert.Equal(values.Length + 1 - rank, (int)interval.Upper);
            Assert.True(interval.AchievedConfidence >= level);
        }
    }

    [Fact]
    public void Beyond_a_thousand_values_the_ranks_go_on_smoothly()
    {
        // The half width of the interval in ranks is close to 1.96·√n/2.
        foreach (var n in new[] { 1000, 1001, 4000, 100_000 })
        {
            var values = Enumerable.Range(1, n).Select(i => (double)i).ToArray();
            var interval = Computed.Value(Median.WithInterval(values, 0.95));
            Close.Absolute((n + 1 - (1.959964 * Math.Sqrt(n))) / 2, interval.LowerRank, 1);
            Assert.InRange(interval.AchievedConfidence, 0.95, 0.956);
        }
    }

    [Fact]
    public void Six_values_are_the_fewest_at_95_percent()
    {
        var five = Median.WithInterval([5, 2, 3, 4, 1], 0.95);
        Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, five);
        Assert.Equal(new PointEstimate(3), five.NotComputable!.Point);
        var interval = Computed.Value(Median.WithInterval([6, 5, 4, 3, 2, 1], 0.95));
        Assert.Equal((1, 6, 3.5), (interval.Lower, interval.Upper, interval.Value));
        Assert.Equal(1 - (2.0 / 64), interval.AchievedConfidence);
    }

    [Fact]
    public void A_level_that_is_met_exactly_is_enough()
    {
        // P(Binomial(3, ½) ≤ 0) = 1/8, so the full range has exactly 75 %: rank 0 would be the smallest q reaching 1/8.
        Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, Median.WithInterval([1, 2, 3], 0.75));
        Assert.Equal(0.75, Computed.Value(Median.WithInterval([1, 2, 3], 0.74)).AchievedConfidence);
    }

    [Fact]
    public void No_value_gives_no_median_and_four_the_mean_of_the_middle_two()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, Median.WithInterval([], 0.9));
        Assert.Equal(2.5, Computed.Value(Median.WithInterval([4, 2, 1, 3], 0.5)).Value);
    }

    [Fact]
    public void Huge_middle_values_do_not_overflow() =>
        Assert.Equal(1e300, Computed.Value(Median.WithInterval([1e300, 1e300], 0.4)).Value);

    [Fact]
    public void Constant_values_give_a_point()
    {
        var interval = Computed.Value(Median.WithInterval([2, 2, 2, 2, 2, 2], 0.95));

        Assert.Equal((2, 2, 2), (interval.Lower, interval.Value, interval.Upper));
    }

    [Fact]
    public void Input_is_left_as_it_was()
    {
        double[] values = [3, 1, 2, 9, 7, 8];

        Median.WithInterval(values, 0.9);

        Assert.Equal([3, 1, 2, 9, 7, 8], values);
    }

    [Fact]
    public void Skewed_samples_are_covered_as_often_as_achieved()
    {
        const int repetitions = 4000;
        var random = new SeededRandom(2);
        var values = new double[15];
        var covered = 0;
        var achieved = 0.0;
        for (var i = 0; i < repetitions; i++)
        {
            for (var j = 0; j < values.Length; j++)
            {
                values[j] = -Math.Log(random.NextDouble());
            }

            var interval = Computed.Value(Median.WithInterval(values, 0.9));
            achieved = interval.AchievedConfidence;
            covered += interval.Lower < Math.Log(2) && Math.Log(2) < interval.Upper ? 1 : 0;
        }

        Close.Absolute(
            achieved,
            (double)covered / repetitions,
            3.5 * Math.Sqrt(achieved * (1 - achieved) / repetitions)
        );
    }
}

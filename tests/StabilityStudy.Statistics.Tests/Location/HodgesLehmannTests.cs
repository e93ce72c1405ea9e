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
    public void More_than_a_thousand_values_carry_a_remark()
    {
        var values = Enumerable.Range(1, 1001).Select(i => (double)i).ToArray();

        var estimate = HodgesLehmann.WithInterval(values, 0.95);

        Assert.Equal(EstimateNote.ApproximateRank, Assert.Single(estimate.Notes));
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
        var interval = Computed.Value(HodgesLehmann.WithInterval(values.AsSpan(1), 0.95));
        Assert.InRange(interval.LowerRank, 1_060_000_000, int.MaxValue);
        Assert.True(interval.Lower < interval.Value && interval.Value < interval.Upper);
    }

    [Fact]
    public void Level_is_never_lowered_when_there_is_no_interval()
    {
        double[] five = [1, 2, 3, 4, 5];

        var estimate = HodgesLehmann.WithInterval(five, 0.95);
        Computed.Refusal(AssumptionCode.NoIntervalAtThisSize, estimate);
        Assert.Equal(new PointEstimate(3), estimate.NotComputable!.Point);
    }

    [Fact]
    public void No_value_gives_no_estimate()
    {
        Computed.Refusal(AssumptionCode.TooFewValues, HodgesLehmann.WithInterval([], 0.9));
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

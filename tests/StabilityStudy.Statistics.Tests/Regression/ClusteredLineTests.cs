using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>The change predicted at a level when results of a day share runs: the wider of pairs and whole days left out.</summary>
public sealed class ClusteredLineTests
{
    public static TheoryData<string> Names { get; } = [.. Cases];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_wider_interval_agrees_with_R(string name)
    {
        var expected = ClusterReference.Expected(name);
        var x = Pairs(name).X.AsSpan();
        var y = Pairs(name).Y.AsSpan();
        var days = ClusterReference.Days(name);
        var level = expected["level"];

        Agrees(expected, "constant", DemingRegression.BiasAt(x, y, 0.5, level, 0.9, [days]).Value!);
        Agrees(
            expected,
            "weighted",
            WeightedDemingRegression.BiasAt(x, y, 0.5, level, 0.9, [days]).Value!
        );
    }

    [Fact]
    public void One_cluster_and_clusters_of_one_pair_are_as_without()
    {
        var x = Pairs("wide").X.AsSpan();
        var y = Pairs("wide").Y.AsSpan();
        var without = WeightedDemingRegression.BiasAt(x, y, 1, 40, 0.9, []);

        Assert.Equal(
            without.Value,
            WeightedDemingRegression.BiasAt(x, y, 1, 40, 0.9, [Runs([.. new int[x.Length]])]).Value
        );
        Assert.Equal(
            without.Value,
            WeightedDemingRegression
                .BiasAt(x, y, 1, 40, 0.9, [Runs([.. Enumerable.Range(0, x.Length)])])
                .Value
        );
    }

    [Fact]
    public void The_widest_of_all_ways_decides_in_any_order()
    {
        var x = Pairs("wide").X.AsSpan();
        var y = Pairs("wide").Y.AsSpan();
        var days = ClusterReference.Days("wide");
        var count = x.Length;
        var runs = Runs([.. Enumerable.Range(0, count).Select(i => i * 4 / count)]);

        BiasAtLevel Bias(
            ReadOnlySpan<double> x,
            ReadOnlySpan<double> y,
            params ImmutableArray<Clustering> clusterings
        ) => DemingRegression.BiasAt(x, y, 0.5, 40, 0.9, clusterings).Value!;
        var both = Bias(x, y, days, runs);
        var widest = new[] { Bias(x, y), Bias(x, y, days), Bias(x, y, runs) }.MaxBy(bias =>
            bias.Upper
        );

        Assert.Equal(widest, both);
        Assert.Equal(both, Bias(x, y, runs, days));
    }

    /// <summary>Runs that are the days are fitted once, and the first of both is named.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Two_ways_that_part_pairs_alike_are_one(string name)
    {
        var x = Pairs(name).X.AsSpan();
        var y = Pairs(name).Y.AsSpan();
        var days = ClusterReference.Days(name);
        var alone = DemingRegression.BiasAt(x, y, 0.5, 30, 0.9, [days]).Value;
        for (var factor = 1; factor < 11; factor++)
        {
            var runs = Runs([.. days.Cluster.Select(day => (day + 1) * factor % 11)]);
            Assert.Equal(alone, DemingRegression.BiasAt(x, y, 0.5, 30, 0.9, [days, runs]).Value);
            var fits = JackknifedLine.FitByClusters(
                x,
                y,
                [days, runs],
                JackknifedLine.Fit(x, y, Line, leaveOut: null),
                Line,
                leaveOut: null
            );
            Assert.Equal(IntervalSource.CollectionDays, Assert.Single(fits).Source);
        }
    }

    private static Estimate<Line> Line(ReadOnlySpan<double> x, ReadOnlySpan<double> y) =>
        DemingRegression.FitLine(x, y, 0.5);

    [Fact]
    public void Skewness_lengthens_each_half_by_its_factor()
    {
        var x = Pairs("wide").X.AsSpan();
        var y = Pairs("wide").Y.AsSpan();
        var bias = DemingRegression.BiasAt(x, y, 1, 40, 0.9, []).Value!;

        var longer = bias.Lengthened(new SkewnessStretch(1, 1.25, 1.5));

        Close(1.25 * (bias.Bias - bias.Lower), longer.Bias - longer.Lower, 1e-13);
        Close(1.5 * (bias.Upper - bias.Bias), longer.Upper - longer.Bias, 1e-13);
        Assert.Equal(bias, bias.Lengthened(new SkewnessStretch(0, 1, 1)));
        Assert.Throws<ArgumentNullException>("stretch", () => bias.Lengthened(null!));
    }

    /// <summary>All pairs but one on one day: without that day there is no line, so there is no interval.</summary>
    [Fact]
    public void A_day_without_which_there_is_no_line_leaves_no_interval()
    {
        double[] x = [10, 20, 30, 40];
        double[] y = [11, 21, 30, 42];

        Assert.Equal(
            AssumptionCode.ConstantBaseline,
            DemingRegression.BiasAt(x, y, 1, 25, 0.9, [Runs([1, 1, 1, 2])]).NotComputable?.Code
        );
    }

    [Fact]
    public void Clusters_of_another_number_throw() =>
        Assert.Throws<ArgumentException>(
            "clusterings",
            () => DemingRegression.BiasAt([1, 2, 3], [1, 2, 4], 1, 2, 0.9, [Runs([1, 2])])
        );

    private static void Agrees(Dictionary<string, double> expected, string kind, BiasAtLevel actual)
    {
        Close(expected[kind + "_bias"], actual.Bias);
        Close(expected[kind + "_half"], actual.Upper - actual.Bias);
        Close(expected[kind + "_half"], actual.Bias - actual.Lower);
        Assert.Equal(
            expected[kind + "_by_days"] == 1
                ? IntervalSource.CollectionDays
                : IntervalSource.Specimens,
            actual.DecidedBy
        );
    }

    private static Clustering Runs(ImmutableArray<int> cluster) =>
        new(IntervalSource.DelayedRuns, cluster);
}

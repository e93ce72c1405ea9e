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

        Agrees(expected, "constant", DemingRegression.BiasAt(x, y, 0.5, level, 0.9, days).Value!);
        Agrees(
            expected,
            "weighted",
            WeightedDemingRegression.BiasAt(x, y, 0.5, level, 0.9, days).Value!
        );
    }

    [Fact]
    public void One_cluster_and_clusters_of_one_pair_are_as_without()
    {
        var x = Pairs("wide").X.AsSpan();
        var y = Pairs("wide").Y.AsSpan();
        var without = WeightedDemingRegression.BiasAt(x, y, 1, 40, 0.9);

        Assert.Equal(
            without.Value,
            WeightedDemingRegression.BiasAt(x, y, 1, 40, 0.9, new int[x.Length]).Value
        );
        Assert.Equal(
            without.Value,
            WeightedDemingRegression
                .BiasAt(x, y, 1, 40, 0.9, Enumerable.Range(0, x.Length).ToArray())
                .Value
        );
    }

    /// <summary>All pairs but one on one day: without that day there is no line, so there is no interval.</summary>
    [Fact]
    public void A_day_without_which_there_is_no_line_leaves_no_interval()
    {
        double[] x = [10, 20, 30, 40];
        double[] y = [11, 21, 30, 42];

        Assert.Equal(
            AssumptionCode.ConstantBaseline,
            DemingRegression.BiasAt(x, y, 1, 25, 0.9, [1, 1, 1, 2]).NotComputable?.Code
        );
    }

    [Fact]
    public void Clusters_of_another_number_throw() =>
        Assert.Throws<ArgumentException>(
            "cluster",
            () => DemingRegression.BiasAt([1, 2, 3], [1, 2, 4], 1, 2, 0.9, [1, 2])
        );

    private static void Agrees(Dictionary<string, double> expected, string kind, BiasAtLevel actual)
    {
        Close(expected[kind + "_bias"], actual.Bias);
        Close(expected[kind + "_half"], actual.Upper - actual.Bias);
        Close(expected[kind + "_half"], actual.Bias - actual.Lower);
        Assert.Equal(expected[kind + "_by_days"] == 1, actual.DecidedByClusters);
    }
}

using CsCheck;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class ClusteredMeanTests
{
    private static readonly Gen<(double Value, int Cluster)[]> s_clustered = Gen.Select(
            Gen.Int[-300, 300].Select(tenths => tenths / 10.0),
            Gen.Int[-2, 4]
        )
        .Array[4, 25]
        .Where(rows => rows.Select(r => r.Item1).Distinct().Count() > 1);

    [Fact]
    public void Days_that_differ_decide()
    {
        double[] values = [0, 1, 10, 11, 20, 21];
        int[] days = [1, 1, 2, 2, 3, 3];

        var mean = Computed.Value(ClusteredMean.WithInterval(values, days, 0.9));

        var byDay = Computed.Value(ArithmeticMean.WithInterval([0.5, 10.5, 20.5], 0.9));
        Assert.Equal(WidestInterval.Clusters, mean.DecidedBy);
        Assert.Equal(byDay, Computed.Value(mean.ByCluster));
        Assert.Equal((3, 2, 10.5), (mean.ClusterCount, mean.DegreesOfFreedom, mean.Mean));
        Assert.Equal((byDay.Lower, byDay.Upper), (mean.Lower, mean.Upper));
        Assert.Equal(byDay.StandardError, mean.StandardError);
    }

    [Fact]
    public void Days_that_agree_leave_the_decision_to_the_specimens()
    {
        double[] values = [0, 10, 0.5, 9.5, 1, 9.2];
        int[] days = [1, 1, 2, 2, 3, 3];

        var mean = Computed.Value(ClusteredMean.WithInterval(values, days, 0.9));

        Assert.Equal(WidestInterval.Specimens, mean.DecidedBy);
        Assert.Equal(mean.BySpecimen.Lower, mean.Lower);
        Assert.Equal(5, mean.DegreesOfFreedom);
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(-1000)]
    public void What_decides_is_how_wide_an_interval_is_and_not_where_it_lies(double shift)
    {
        double[] values = [0, 1, 10, 11, 20, 21];
        int[] days = [1, 1, 2, 2, 3, 3];

        var moved = Computed.Value(
            ClusteredMean.WithInterval([.. values.Select(value => value + shift)], days, 0.9)
        );

        Assert.Equal(WidestInterval.Clusters, moved.DecidedBy);
        Assert.Equal(2, moved.DegreesOfFreedom);
    }

    [Fact]
    public void One_value_a_cluster_is_the_plain_interval()
    {
        double[] values = [0.1, 0.7, -0.4, 1.9];

        var mean = Computed.Value(ClusteredMean.WithInterval(values, [4, 3, 2, 1], 0.9));

        Assert.Equal(WidestInterval.Specimens, mean.DecidedBy);
        Assert.Equal(Computed.Value(ArithmeticMean.WithInterval(values, 0.9)), mean.BySpecimen);
        Assert.Equal((mean.BySpecimen.Lower, mean.BySpecimen.Upper), (mean.Lower, mean.Upper));
    }

    [Fact]
    public void One_cluster_gives_the_plain_interval_with_a_remark()
    {
        var estimate = ClusteredMean.WithInterval([1, 2, 4], [7, 7, 7], 0.9);

        var mean = Computed.Value(estimate);
        Computed.Refusal(AssumptionCode.TooFewValues, mean.ByCluster);
        Assert.Equal((1, WidestInterval.Specimens), (mean.ClusterCount, mean.DecidedBy));
        Assert.Equal(EstimateNote.OneCluster, Assert.Single(estimate.Notes));
    }

    [Fact]
    public void Unequal_clusters_reach_from_the_smaller_to_the_larger_end()
    {
        double[] values = [0, 0.1, 0.2, 0.1, 0.3, 5];
        int[] days = [1, 1, 1, 1, 1, 2];

        var mean = Computed.Value(ClusteredMean.WithInterval(values, days, 0.9));

        var byDay = Computed.Value(mean.ByCluster);
        Assert.NotEqual(mean.BySpecimen.Mean, byDay.Mean, 3);
        Assert.Equal(Math.Min(mean.BySpecimen.Lower, byDay.Lower), mean.Lower);
        Assert.Equal(Math.Max(mean.BySpecimen.Upper, byDay.Upper), mean.Upper);
    }

    [Fact]
    public void Interval_is_never_narrower_than_either() =>
        s_clustered.Sample(rows =>
        {
            var mean = Computed.Value(Of(rows));
            Assert.True(mean.Lower <= mean.BySpecimen.Lower && mean.BySpecimen.Upper <= mean.Upper);
            if (
                mean.ByCluster.TryGet(out var byCluster)
                && mean.ClusterCount < mean.BySpecimen.Count
            )
            {
                Assert.True(mean.Lower <= byCluster.Lower && byCluster.Upper <= mean.Upper);
            }
        });

    [Fact]
    public void Names_and_order_of_the_clusters_do_not_matter() =>
        s_clustered.Sample(rows =>
        {
            var mean = Computed.Value(Of(rows));
            var other = Computed.Value(
                Of([.. rows.Reverse().Select(r => (r.Value, (r.Cluster * -17) + 3))])
            );
            Close.Absolute(mean.Lower, other.Lower, 1e-9);
            Close.Absolute(mean.Upper, other.Upper, 1e-9);
            Assert.Equal(mean.ClusterCount, other.ClusterCount);
        });

    [Fact]
    public void Too_few_values_are_refused() =>
        Computed.Refusal(AssumptionCode.TooFewValues, ClusteredMean.WithInterval([1], [1], 0.9));

    [Fact]
    public void Constant_values_carry_a_remark() =>
        Assert.Equal(
            EstimateNote.SameValues,
            Assert.Single(ClusteredMean.WithInterval([2, 2, 2], [1, 1, 2], 0.9).Notes)
        );

    [Fact]
    public void Lengths_differ_throws() =>
        Assert.Throws<ArgumentException>(
            "cluster",
            () => ClusteredMean.WithInterval([1, 2], [1], 0.9)
        );

    private static Estimate<ClusteredMeanInterval> Of((double Value, int Cluster)[] rows) =>
        ClusteredMean.WithInterval(
            [.. rows.Select(r => r.Value)],
            [.. rows.Select(r => r.Cluster)],
            0.9
        );
}

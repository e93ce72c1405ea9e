using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class ClusteredMeanTests
{
    [Fact]
    public void Days_that_differ_decide()
    {
        double[] values = [0, 1, 10, 11, 20, 21];

        var mean = Of(values, Days(1, 1, 2, 2, 3, 3));

        var byDay = Computed.Value(ArithmeticMean.WithInterval([0.5, 10.5, 20.5], 0.9));
        var found = Assert.Single(mean.ByCluster);
        Assert.Equal(IntervalSource.CollectionDays, mean.DecidedBy);
        Assert.Equal(
            (3, byDay.Mean, byDay.StandardError, 2.0, byDay.Lower, byDay.Upper),
            (
                found.Clusters,
                found.Mean,
                found.StandardError,
                found.DegreesOfFreedom,
                found.Lower,
                found.Upper
            )
        );
        Assert.Equal((2, 10.5), (mean.DegreesOfFreedom, mean.Mean));
        Assert.Equal((byDay.Lower, byDay.Upper), (mean.Lower, mean.Upper));
        Assert.Equal(byDay.StandardError, mean.StandardError);
    }

    /// <summary>Mean 5.033 and skewness 0.0055: the halves are all but equal, and those of the specimens are the longer ones.</summary>
    [Fact]
    public void Days_that_agree_leave_the_decision_to_the_specimens()
    {
        double[] values = [0, 10, 0.5, 9.5, 1, 9.2];

        var mean = Of(values, Days(1, 1, 2, 2, 3, 3));

        Assert.Equal(IntervalSource.Specimens, mean.DecidedBy);
        Assert.Equal(mean.BySpecimen.StandardError, mean.StandardError);
        Assert.Equal(5, mean.DegreesOfFreedom);
        Close.Relative(
            mean.Mean - (mean.Stretch.Downward * (mean.Mean - mean.BySpecimen.Lower)),
            mean.Lower,
            1e-12
        );
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(-1000)]
    public void What_decides_is_how_wide_an_interval_is_and_not_where_it_lies(double shift)
    {
        double[] values = [0, 1, 10, 11, 20, 21];

        var moved = Of([.. values.Select(value => value + shift)], Days(1, 1, 2, 2, 3, 3));

        Assert.Equal(IntervalSource.CollectionDays, moved.DecidedBy);
        Assert.Equal(2, moved.DegreesOfFreedom);
    }

    [Fact]
    public void Without_clusters_and_skewness_it_is_the_plain_interval()
    {
        double[] values = [-2, -1, 1, 2];

        var mean = Of(values);

        Assert.Empty(mean.ByCluster);
        Assert.Equal(IntervalSource.Specimens, mean.DecidedBy);
        Assert.Equal(Computed.Value(ArithmeticMean.WithInterval(values, 0.9)), mean.BySpecimen);
        Assert.Equal((mean.BySpecimen.Lower, mean.BySpecimen.Upper), (mean.Lower, mean.Upper));
    }

    [Fact]
    public void One_value_a_cluster_is_as_without_clusters()
    {
        double[] values = [0.1, 0.7, -0.4, 1.9];

        var mean = Of(values, Days(4, 3, 2, 1));

        Assert.Empty(mean.ByCluster);
        var without = Of(values);
        Assert.Equal((without.Lower, without.Upper), (mean.Lower, mean.Upper));
        Assert.Equal(IntervalSource.Specimens, mean.DecidedBy);
    }

    [Fact]
    public void One_cluster_gives_no_interval_of_its_own_but_a_remark()
    {
        var estimate = ClusteredMean.WithInterval([1, 2, 4], [Days(7, 7, 7)], 0.9);

        var mean = Computed.Value(estimate);
        Assert.Empty(mean.ByCluster);
        Assert.Null(mean.Over(IntervalSource.CollectionDays));
        Assert.Equal(IntervalSource.Specimens, mean.DecidedBy);
        Assert.Equal(EstimateNote.OneCluster, Assert.Single(estimate.Notes));
    }

    /// <summary>Two values have no skewness, so nothing is lengthened.</summary>
    [Fact]
    public void Two_values_are_the_plain_interval()
    {
        var mean = Of([3, 8], Days(1, 2));

        Assert.Equal(new SkewnessStretch(0, 1, 1), mean.Stretch);
        Assert.Equal((mean.BySpecimen.Lower, mean.BySpecimen.Upper), (mean.Lower, mean.Upper));
    }

    [Fact]
    public void Unequal_clusters_reach_from_the_lowest_to_the_highest_end()
    {
        // Symmetric, so that nothing is lengthened.
        double[] values = [-3, -1, 0, 1, 3, -1, 0, 1];

        var mean = Of(values, Days(1, 1, 1, 1, 1, 1, 1, 2), Persons(1, 1, 2, 2, 2, 2, 2, 2));

        Assert.Equal(new SkewnessStretch(0, 1, 1), mean.Stretch);
        Assert.Equal(2, mean.ByCluster.Length);
        Assert.All(mean.ByCluster, item => Assert.NotEqual(mean.Mean, item.Mean, 3));
        Assert.Equal(mean.ByCluster.Min(item => item.Lower), mean.Lower);
        Assert.Equal(mean.ByCluster.Max(item => item.Upper), mean.Upper);
    }

    /// <summary>By hand: baseline runs 0 and 4, delayed runs 1 and 3, cells −1, 1, 3, 5: variances of their means 4, 1 and 5/3, so V = 10/3; one degree of freedom around 2.</summary>
    [Fact]
    public void Runs_that_cross_by_hand()
    {
        double[] values = [-1, 1, 3, 5];

        var mean = Of(
            values,
            new(IntervalSource.BaselineRuns, [1, 1, 2, 2]),
            new(IntervalSource.DelayedRuns, [1, 2, 1, 2])
        );

        var crossed = mean.ByCluster[^1];
        Assert.Equal(
            (IntervalSource.CrossedRuns, 2, 1.0),
            (crossed.Source, crossed.Clusters, crossed.DegreesOfFreedom)
        );
        Close.Relative(Math.Sqrt(10.0 / 3), crossed.StandardError, 1e-14);
        var reach = StudentT.Quantile(0.95, 1) * Math.Sqrt(10.0 / 3);
        Close.Relative(2 - reach, crossed.Lower, 1e-13);
        Close.Relative(2 + reach, crossed.Upper, 1e-13);
    }

    [Fact]
    public void Nested_runs_have_no_interval_of_their_own()
    {
        double[] values = [1, 4, 2, 6, 3, 9, 4, 7];

        var mean = Of(
            values,
            new(IntervalSource.BaselineRuns, [1, 1, 2, 2, 3, 3, 4, 4]),
            new(IntervalSource.DelayedRuns, [1, 1, 1, 1, 2, 2, 2, 2])
        );

        Assert.Equal(
            [IntervalSource.BaselineRuns, IntervalSource.DelayedRuns],
            mean.ByCluster.Select(item => item.Source)
        );
    }

    /// <summary>Runs agree far better than pairs of runs do: the variances leave nothing, and the other intervals decide.</summary>
    [Fact]
    public void Crossed_runs_without_a_variance_of_their_own_leave_the_decision_to_the_others()
    {
        var mean = Of(
            [-5, 5, 5, -5],
            new(IntervalSource.BaselineRuns, [1, 1, 2, 2]),
            new(IntervalSource.DelayedRuns, [1, 2, 1, 2])
        );

        Assert.Null(mean.Over(IntervalSource.CrossedRuns));
        Assert.Equal(IntervalSource.Specimens, mean.DecidedBy);
    }

    /// <summary>Days and runs that are the same specimens are a tie; the first one is named, whatever the numbers of the runs.</summary>
    [Theory]
    [InlineData("nested runs")]
    [InlineData("long tail upward")]
    [InlineData("uneven days")]
    [InlineData("unbalanced crossing")]
    public void Clusterings_that_part_values_alike_give_the_same_interval_to_the_last_digit(
        string name
    )
    {
        var values = ClusteredMeanReference.Values(name);
        var days = ClusteredMeanReference.Clusterings(name)[0];
        for (var factor = 1; factor < 11; factor++)
        {
            var runs = new Clustering(
                IntervalSource.DelayedRuns,
                [.. days.Cluster.Select(day => day * factor % 11)]
            );

            var mean = Of(values, days, runs);

            Assert.Equal(
                mean.ByCluster[0],
                mean.ByCluster[1] with
                {
                    Source = IntervalSource.CollectionDays,
                }
            );
            Assert.NotEqual(IntervalSource.DelayedRuns, mean.DecidedBy);
        }
    }

    [Fact]
    public void Too_few_values_are_refused() =>
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            ClusteredMean.WithInterval([1], [Days(1)], 0.9)
        );

    [Fact]
    public void Constant_values_carry_a_remark_and_have_no_width()
    {
        var estimate = ClusteredMean.WithInterval([2, 2, 2], [Days(1, 1, 2)], 0.9);

        Assert.Equal(EstimateNote.SameValues, Assert.Single(estimate.Notes));
        var mean = Computed.Value(estimate);
        Assert.Equal((2.0, 2.0), (mean.Lower, mean.Upper));
    }

    [Fact]
    public void Lengths_differ_throws() =>
        Assert.Throws<ArgumentException>(
            "values",
            () => ClusteredMean.WithInterval([1, 2], [Days(1)], 0.9)
        );

    private static ClusteredMeanInterval Of(
        double[] values,
        params ImmutableArray<Clustering> clusterings
    ) => Computed.Value(ClusteredMean.WithInterval(values, clusterings, 0.9));

    private static Clustering Days(params ImmutableArray<int> cluster) =>
        new(IntervalSource.CollectionDays, cluster);

    private static Clustering Persons(params ImmutableArray<int> cluster) =>
        new(IntervalSource.Persons, cluster);
}

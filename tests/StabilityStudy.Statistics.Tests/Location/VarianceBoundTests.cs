using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class VarianceBoundTests
{
    /// <summary>5 % points of χ² as printed (Pearson and Hartley, Biometrika Tables, table 8, from memory): 0.711 of 4, 3.325 of 9, 10.117 of 19.</summary>
    [Theory]
    [InlineData(4, 0.711)]
    [InlineData(9, 3.325)]
    [InlineData(19, 10.117)]
    public void One_variance_is_divided_by_the_printed_point(int degrees, double printed) =>
        Close.Relative(degrees * 2.5 / printed, VarianceBound.Upper(2.5, degrees, 0.95), 1e-3);

    /// <summary>With two degrees of freedom P(χ² &gt; c) = exp(−c/2), with one χ² is a squared normal number.</summary>
    [Theory]
    [InlineData(0.9)]
    [InlineData(0.95)]
    [InlineData(0.999)]
    public void One_and_two_degrees_of_freedom_have_a_closed_form(double level)
    {
        Close.Relative(2 / (-2 * Math.Log(level)), VarianceBound.Upper(1, 2, level), 1e-12);
        Close.Relative(
            1 / Math.Pow(Normal.Quantile((2 - level) / 2), 2),
            VarianceBound.Upper(1, 1, level),
            1e-10
        );
    }

    /// <summary>By hand: means 2, 5, 8 with S² = 9, within 2 on 3 degrees of freedom, h = 2; χ² of two degrees of freedom −2·ln 0.95 = 0.10259, of three 0.35185 (printed 0.352).</summary>
    [Fact]
    public void Three_clusters_of_two_by_hand()
    {
        var found = VarianceBound
            .OfClusters([1, 3, 4, 6, 7, 9], Days(1, 1, 2, 2, 3, 3), 0.95)
            .Value!;

        Close.Relative((2 * 9 / (-2 * Math.Log(0.95))) - 1, found.Shared, 1e-12);
        Close.Relative(3 * 2 / 0.351846, found.Within, 1e-5);
    }

    [Fact]
    public void Clusters_that_differ_less_than_chance_gives_still_leave_a_bound_not_below_zero()
    {
        var found = VarianceBound.OfClusters([-1, 1, -1, 1], Days(1, 1, 2, 2), 0.95).Value!;

        Assert.Equal(0, found.Shared);
        Assert.True(found.Within > 2);
    }

    /// <summary>Days of 20, 5, 5, 5 and 5: the bound holds what days share in 95 of 100 samples, be it little or much.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(3)]
    public void Uneven_clusters_are_held_as_often_as_stated(double shared)
    {
        const int samples = 4000;
        int[] sizes = [20, 5, 5, 5, 5];
        var days = Days([.. sizes.SelectMany((size, day) => Enumerable.Repeat(day, size))]);
        var random = new SeededRandom(2026);
        var held = 0;
        for (var i = 0; i < samples; i++)
        {
            double[] ofDays = [.. sizes.Select(_ => shared * random.NextNormal())];
            double[] values = [.. days.Cluster.Select(day => ofDays[day] + random.NextNormal())];
            held +=
                VarianceBound.OfClusters(values, days, 0.95).Value!.Shared >= shared * shared
                    ? 1
                    : 0;
        }

        // Five binomial standard errors, and a hundredth for the approximation.
        Assert.InRange((double)held / samples, 0.95 - 0.017 - 0.01, 0.95 + 0.017 + 0.01);
    }

    [Fact]
    public void Refuses_as_the_analysis_of_variance_does_and_what_is_no_bound()
    {
        Assert.Equal(
            AssumptionCode.TooFewValues,
            VarianceBound.OfClusters([1, 2, 3], Days(1, 1, 1), 0.95).NotComputable?.Code
        );
        Assert.Throws<ArgumentException>(() => VarianceBound.Upper(-1, 4, 0.95));
        Assert.Throws<ArgumentException>(() => VarianceBound.Upper(1, 0, 0.95));
        Assert.Throws<ArgumentException>(() => VarianceBound.Upper(1, 4, 0.05));
    }

    private static Clustering Days(params ImmutableArray<int> cluster) =>
        new(IntervalSource.CollectionDays, cluster);
}

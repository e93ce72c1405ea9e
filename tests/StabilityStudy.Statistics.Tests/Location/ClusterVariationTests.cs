using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Tests.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class ClusterVariationTests
{
    public static TheoryData<string> Names { get; } = [.. Cases];

    [Theory]
    [MemberData(nameof(Names))]
    public void Agrees_with_the_analysis_of_variance_of_R(string name)
    {
        var expected = ClusterReference.Expected(name);
        var pairs = Pairs(name);
        var changes = RelativeChangeOf(pairs);

        var found = ClusterVariation.Compute(changes, ClusterReference.Days(name)).Value!;

        Close(expected["between"], found.MeanSquareBetween);
        Close(expected["within"], found.MeanSquareWithin);
        Close(expected["ratio"], found.Ratio);
        Close(expected["p"], found.PValue);
        Close(expected["shared"], found.SharedStandardDeviation);
        Close(expected["error"], found.SharedStandardError);
    }

    /// <summary>By hand: means 2, 5, 8 and grand mean 5, between (2·9 + 0 + 2·9)/2 = 18, within (2 + 2 + 2)/3 = 2, m₀ = 2, shared √8, error √(8/3).</summary>
    [Fact]
    public void Three_clusters_of_two_by_hand()
    {
        var found = ClusterVariation.Compute([1, 3, 4, 6, 7, 9], Days(1, 1, 2, 2, 3, 3)).Value!;

        Close(18, found.MeanSquareBetween);
        Close(2, found.MeanSquareWithin);
        Close(9, found.Ratio);
        Close(Math.Sqrt(8), found.SharedStandardDeviation);
        Close(Math.Sqrt(8.0 / 3), found.SharedStandardError);
    }

    [Fact]
    public void Clusters_without_spread_inside_leave_no_chance_that_they_are_alike()
    {
        var found = ClusterVariation.Compute([1, 1, 2, 2], Days(0, 0, 1, 1)).Value!;

        Assert.Equal(double.PositiveInfinity, found.Ratio);
        Assert.Equal(0, found.PValue);
        Close(Math.Sqrt(0.5), found.SharedStandardDeviation);
    }

    [Theory]
    [InlineData(new double[] { 1, 2, 3 }, new[] { 1, 1, 1 }, AssumptionCode.TooFewValues)]
    [InlineData(new double[] { 1, 2, 3 }, new[] { 1, 2, 3 }, AssumptionCode.TooFewValues)]
    [InlineData(new double[] { }, new int[] { }, AssumptionCode.TooFewValues)]
    [InlineData(new double[] { 4, 4, 4 }, new[] { 1, 1, 2 }, AssumptionCode.ZeroSpread)]
    public void What_cannot_be_told_is_refused(double[] values, int[] cluster, string code) =>
        Assert.Equal(
            code,
            ClusterVariation.Compute(values, Days([.. cluster])).NotComputable?.Code
        );

    [Fact]
    public void Lengths_that_differ_throw() =>
        Assert.Throws<ArgumentException>("values", () => ClusterVariation.Compute([1, 2], Days(1)));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_value_that_is_no_number_throws(double wrong) =>
        Assert.Throws<ArgumentException>(
            "values",
            () => ClusterVariation.Compute([1, wrong, 3], Days(1, 1, 2))
        );

    private static Clustering Days(params ImmutableArray<int> cluster) =>
        new(IntervalSource.CollectionDays, cluster);

    private static double[] RelativeChangeOf(ExactPairs pairs) =>
        [.. pairs.X.Zip(pairs.Y, (x, y) => 100 * (y - x) / x)];
}

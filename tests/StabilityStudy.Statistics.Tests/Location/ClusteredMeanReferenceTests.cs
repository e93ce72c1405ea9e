using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Intervals over everything that specimens share, against R.</summary>
public sealed class ClusteredMeanReferenceTests
{
    private const double Tolerance = 1e-9;

    public static TheoryData<string> Names { get; } = [.. ClusteredMeanReference.Cases];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_interval_and_what_spans_them_agree_with_R(string name)
    {
        var expected = ClusteredMeanReference.Expected(name);

        var found = Computed.Value(
            ClusteredMean.WithInterval(
                ClusteredMeanReference.Values(name),
                ClusteredMeanReference.Clusterings(name),
                0.9
            )
        );

        Same(expected["skewness"], found.Stretch.Skewness);
        Same(expected["downward"], found.Stretch.Downward);
        Same(expected["upward"], found.Stretch.Upward);
        Same(expected["Specimens mean"], found.Mean);
        Same(expected["Specimens lower"], found.BySpecimen.Lower);
        Same(expected["Specimens upper"], found.BySpecimen.Upper);
        foreach (var source in Enum.GetValues<IntervalSource>())
        {
            if (source == IntervalSource.Specimens)
            {
                continue;
            }

            var isExpected = expected.TryGetValue($"{source} lower", out var lower);
            var part = found.Over(source);
            Assert.Equal(isExpected, part is not null);
            if (part is not null)
            {
                Same(expected[$"{source} mean"], part.Mean);
                Same(lower, part.Lower);
                Same(expected[$"{source} upper"], part.Upper);
            }
        }

        Same(expected["lower"], found.Lower);
        Same(expected["upper"], found.Upper);
        var widest = expected
            .Keys.Where(key => key.EndsWith(" lower", StringComparison.Ordinal))
            .Select(key => key.Split(' ')[0])
            .Max(source => expected[$"{source} upper"] - expected[$"{source} lower"]);
        var decided = found.DecidedBy.ToString();
        Same(widest, expected[$"{decided} upper"] - expected[$"{decided} lower"]);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_clusters_share_agrees_with_the_analysis_of_variance_of_R(string name)
    {
        var expected = ClusteredMeanReference.Expected(name);
        foreach (var clustering in ClusteredMeanReference.Clusterings(name))
        {
            var computed = ClusterVariation.Compute(
                ClusteredMeanReference.Values(name),
                clustering
            );

            Assert.Equal(
                expected.TryGetValue($"{clustering.Source} between", out var between),
                computed.TryGet(out var found)
            );
            if (found is not null)
            {
                Same(between, found.MeanSquareBetween);
                Same(expected[$"{clustering.Source} within"], found.MeanSquareWithin);
                Same(expected[$"{clustering.Source} p"], found.PValue);
                Same(expected[$"{clustering.Source} shared"], found.SharedStandardDeviation);
                Same(expected[$"{clustering.Source} error"], found.SharedStandardError);
            }
        }
    }

    private static void Same(double expected, double actual) =>
        Close.Absolute(expected, actual, Tolerance * Math.Max(1, Math.Abs(expected)));
}

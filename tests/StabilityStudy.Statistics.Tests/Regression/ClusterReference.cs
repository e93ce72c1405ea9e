using StabilityStudy.Statistics.Location;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>The pairs of the regression reference, given to days in turn, and what R computed from them.</summary>
internal static class ClusterReference
{
    public static Dictionary<string, double> Expected(string name) =>
        Rows("computed/clusters.csv")
            .Where(row => string.Equals(row[0], name, StringComparison.Ordinal))
            .ToDictionary(row => row[1], row => Number(row[2]), StringComparer.Ordinal);

    /// <summary>Pair i is of day i mod 5, in the small case i mod 3.</summary>
    public static Clustering Days(string name) =>
        new(
            IntervalSource.CollectionDays,
            [
                .. Enumerable
                    .Range(1, Pairs(name).X.Length)
                    .Select(i =>
                        i % (string.Equals(name, "small", StringComparison.Ordinal) ? 3 : 5)
                    ),
            ]
        );
}

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Drawn changes with what their specimens share, and what R computed from them.</summary>
internal static class ClusteredMeanReference
{
    private static readonly ReferenceTable s_values = ReferenceTable.Read(
        "computed/clustered_mean_values.csv"
    );

    private static readonly ReferenceTable s_results = ReferenceTable.Read(
        "computed/clustered_mean.csv"
    );

    public static ImmutableArray<string> Cases { get; } =
    [.. Enumerable.Range(0, s_values.Count).Select(row => s_values.Text(row, "case")).Distinct()];

    public static double[] Values(string name) =>
        [.. RowsOf(s_values, name).Select(row => s_values.Number(row, "change"))];

    /// <summary>A column of zeros is a way in which nothing is shared.</summary>
    public static ImmutableArray<Clustering> Clusterings(string name) =>
        [
            .. new[]
            {
                Of(name, "day", IntervalSource.CollectionDays),
                Of(name, "baseline", IntervalSource.BaselineRuns),
                Of(name, "delayed", IntervalSource.DelayedRuns),
                Of(name, "person", IntervalSource.Persons),
            }.Where(item => item.Cluster.Any(cluster => cluster != 0)),
        ];

    public static Dictionary<string, double> Expected(string name) =>
        RowsOf(s_results, name)
            .ToDictionary(
                row => s_results.Text(row, "quantity"),
                row => s_results.Number(row, "value"),
                StringComparer.Ordinal
            );

    private static Clustering Of(string name, string column, IntervalSource source) =>
        new(source, [.. RowsOf(s_values, name).Select(row => s_values.Whole(row, column))]);

    private static IEnumerable<int> RowsOf(ReferenceTable table, string name) =>
        Enumerable.Range(0, table.Count).Where(row => table.Says(row, "case", name));
}

namespace StabilityStudy.Statistics.Location;

/// <summary>A mean whose interval also holds when values share an error and when they are skewed; numbers are in the unit of the values.</summary>
/// <param name="BySpecimen">Mean and t interval over the values, n − 1 degrees of freedom.</param>
/// <param name="ByCluster">The t interval over each clustering that has at least two clusters and fewer clusters than values, in the order given; runs that cross last.</param>
/// <param name="Stretch">By how much skewness lengthens the halves of every interval.</param>
/// <param name="Mean">Mean over the values.</param>
/// <param name="ConfidenceLevel">Two-sided level.</param>
/// <param name="Lower">The smallest lower end of all intervals, lengthened.</param>
/// <param name="Upper">The largest upper end of all intervals, lengthened.</param>
/// <param name="StandardError">Standard error behind the widest of the intervals.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the widest of the intervals.</param>
/// <param name="DecidedBy">Which interval is the widest.</param>
public sealed record ClusteredMeanInterval(
    MeanInterval BySpecimen,
    ImmutableArray<ClusterInterval> ByCluster,
    SkewnessStretch Stretch,
    double Mean,
    double ConfidenceLevel,
    double Lower,
    double Upper,
    double StandardError,
    double DegreesOfFreedom,
    IntervalSource DecidedBy
)
{
    /// <summary>The interval over one clustering; null when it has none.</summary>
    public ClusterInterval? Over(IntervalSource source) =>
        ByCluster.FirstOrDefault(item => item.Source == source);
}

/// <summary>The t interval over the unweighted means of clusters, not lengthened; numbers but the first two and the degrees of freedom are in the unit of the values.</summary>
/// <param name="Source">What the clusters are.</param>
/// <param name="Clusters">Number of clusters k; of runs that cross, the smaller number of runs.</param>
/// <param name="Mean">Mean of the cluster means; of runs that cross, the mean over the values.</param>
/// <param name="StandardError">SD of the cluster means divided by √k; of runs that cross, the root of the sum of both variances less that of the pairs of runs.</param>
/// <param name="DegreesOfFreedom">k − 1.</param>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
public sealed record ClusterInterval(
    IntervalSource Source,
    int Clusters,
    double Mean,
    double StandardError,
    double DegreesOfFreedom,
    double Lower,
    double Upper
);

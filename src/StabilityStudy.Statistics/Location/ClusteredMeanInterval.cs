namespace StabilityStudy.Statistics.Location;

/// <summary>A mean whose interval also holds when the values of a cluster share an error; numbers are in the unit of the values.</summary>
/// <param name="BySpecimen">Mean and t interval over the values, n − 1 degrees of freedom.</param>
/// <param name="ByCluster">Mean and t interval over the cluster means (Count is the number of clusters D, D − 1 degrees of freedom); not computable with one cluster.</param>
/// <param name="ClusterCount">Number of clusters D.</param>
/// <param name="Mean">Mean over the values.</param>
/// <param name="ConfidenceLevel">Two-sided level.</param>
/// <param name="Lower">The smaller of the two lower ends.</param>
/// <param name="Upper">The larger of the two upper ends.</param>
/// <param name="StandardError">Standard error behind the wider of the two intervals.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the wider of the two intervals.</param>
/// <param name="DecidedBy">Which interval is the wider.</param>
public sealed record ClusteredMeanInterval(
    MeanInterval BySpecimen,
    Estimate<MeanInterval> ByCluster,
    int ClusterCount,
    double Mean,
    double ConfidenceLevel,
    double Lower,
    double Upper,
    double StandardError,
    double DegreesOfFreedom,
    WidestInterval DecidedBy
);

/// <summary>What the widest interval of a mean is taken over.</summary>
public enum WidestInterval
{
    /// <summary>The values themselves.</summary>
    Specimens,

    /// <summary>The means of clusters, such as collection days.</summary>
    Clusters,

    /// <summary>The means of persons of whom some gave more than one specimen.</summary>
    Subjects,
}

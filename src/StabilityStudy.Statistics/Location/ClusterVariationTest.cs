namespace StabilityStudy.Statistics.Location;

/// <summary>A one-way analysis of variance over clusters.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Clusters">Number of clusters D.</param>
/// <param name="MeanSquareBetween">Mean square between clusters, D − 1 degrees of freedom, in the squared unit of the values.</param>
/// <param name="MeanSquareWithin">Mean square within clusters, n − D degrees of freedom, in the squared unit of the values.</param>
/// <param name="Ratio">F, the first over the second; infinite when the values of each cluster are the same.</param>
/// <param name="PValue">Chance of so large a ratio when clusters have nothing in common.</param>
/// <param name="SharedStandardDeviation">Standard deviation of what the values of a cluster share, in the unit of the values; 0 when clusters differ by no more than chance gives.</param>
/// <param name="SharedStandardError">What this adds to the standard error of the mean of all values, D − 1 degrees of freedom, in the unit of the values.</param>
public sealed record ClusterVariationTest(
    int Count,
    int Clusters,
    double MeanSquareBetween,
    double MeanSquareWithin,
    double Ratio,
    double PValue,
    double SharedStandardDeviation,
    double SharedStandardError
);

namespace StabilityStudy.Statistics.Outliers;

/// <summary>One step: the value farthest from the mean of what the earlier steps left.</summary>
/// <param name="Index">Position of the value in the input, from 0.</param>
/// <param name="Value">The value, in the unit of the data.</param>
/// <param name="Statistic">R, its distance from the mean in standard deviations of what was left.</param>
/// <param name="CriticalValue">λ, what R must exceed.</param>
public sealed record EsdStep(int Index, double Value, double Statistic, double CriticalValue);

/// <summary>The outcome of the generalized extreme studentized deviate procedure.</summary>
/// <param name="Count">Number of values.</param>
/// <param name="MostOutliers">Number of outliers looked for.</param>
/// <param name="SignificanceLevel">Probability of finding any outlier in a normal sample without one.</param>
/// <param name="Steps">The steps in order; fewer than <paramref name="MostOutliers"/> when what was left had no spread.</param>
/// <param name="OutlierIndices">Positions of the outliers in the input, from 0, most extreme first; empty when there are none.</param>
public sealed record ExtremeStudentizedDeviate(
    int Count,
    int MostOutliers,
    double SignificanceLevel,
    ImmutableArray<EsdStep> Steps,
    ImmutableArray<int> OutlierIndices
);

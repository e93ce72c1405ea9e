namespace StabilityStudy.Core.Planning;

/// <summary>How the results of a time point are supposed to arise, before there are any.</summary>
/// <param name="Specimens">Number of specimens with both results.</param>
/// <param name="CollectionDays">Number of collection days over which they are spread evenly.</param>
/// <param name="SameRun">Whether both results of each specimen come from one run; if not, each day has one run for baselines and another for delayed results.</param>
/// <param name="BaselineMedian">Median of the baselines, in the analyte's unit, above zero.</param>
/// <param name="BaselineLogSd">SD of their natural logarithms: 0.15 is 15 % to first order; 0 for baselines all alike.</param>
/// <param name="ChangeSdPercent">SD of the change among specimens, percent of the baseline, imprecision within a run included.</param>
/// <param name="RunSdPercent">SD of what a run adds to all its results, percent; plays no part in one run.</param>
public sealed record SupposedResults(
    int Specimens,
    int CollectionDays,
    bool SameRun,
    double BaselineMedian,
    double BaselineLogSd,
    double ChangeSdPercent,
    double RunSdPercent
)
{
    /// <summary>SD of one change, what runs add included, percent.</summary>
    internal double TotalSdPercent =>
        Math.Sqrt(
            (ChangeSdPercent * ChangeSdPercent) + (SameRun ? 0 : 2 * RunSdPercent * RunSdPercent)
        );
}

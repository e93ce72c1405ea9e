using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>The mean change in one reading.</summary>
/// <param name="Reading">From where to where the change is taken.</param>
/// <param name="LeftOut">Compared pairs that the reading leaves out: no value at collection, or no bridging plasma in both runs.</param>
/// <param name="Mean">Mean change with its interval.</param>
/// <param name="Spread">Spread and skewness of the changes.</param>
/// <param name="Verdict">What the interval says.</param>
public sealed record ReadMean(
    ChangeReading Reading,
    int LeftOut,
    Estimate<ClusteredMeanInterval> Mean,
    Estimate<SpreadSummary> Spread,
    Verdict Verdict
)
{
    /// <summary>The changes; null where they cannot be computed.</summary>
    internal ChangeOnScale? Changes { get; init; }

    /// <summary>Why the verdict is what it is; null where there is no interval.</summary>
    internal VerdictReason? Reason { get; init; }

    /// <summary>How far the interval is inside the limits, in their unit; negative when it reaches beyond one.</summary>
    internal double Room =>
        Changes is { } changes && Mean.TryGet(out var mean)
            ? Math.Min(changes.UpperLimit - mean.Upper, mean.Lower - changes.LowerLimit)
            : double.NegativeInfinity;
}

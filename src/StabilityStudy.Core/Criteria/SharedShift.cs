using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// By how much the runs of a study could by chance have moved every change. A criterion that counts specimens takes them as independent; those that share a day, a run or a person are not, for what
/// these add moves all of them, perhaps to the good side of a limit.
/// </summary>
/// <remarks>
/// For each clustering the standard error that it adds to the mean change (analysis of variance, <see cref="ClusterVariation"/>) times a one-sided t of k − 1 degrees of freedom; the largest counts. With fewer than eight
/// clusters t leaves half as much beyond it, because so few are too rarely seen to differ. There is no test beforehand of whether clusters differ.
/// </remarks>
internal static class SharedShift
{
    /// <summary>What refutes is moved by this share of the shift: the full shift would refute too rarely (METHODS.md).</summary>
    public const double ShareForRefusal = 0.5;

    private const int ManyClusters = 8;

    /// <summary>The shift in the unit of the changes; 0 where nothing is shared, or too few changes tell.</summary>
    /// <param name="changes">One change a pair.</param>
    /// <param name="clusterings">The ways in which pairs share an error.</param>
    /// <param name="confidenceLevel">One-sided level of the criterion.</param>
    public static double Of(
        ImmutableArray<double> changes,
        ImmutableArray<Clustering> clusterings,
        double confidenceLevel
    ) =>
        clusterings
            .Select(clustering =>
                ClusterVariation.Compute(changes.AsSpan(), clustering).TryGet(out var variation)
                    ? variation.SharedStandardError
                        * StudentT.Quantile(
                            variation.Clusters < ManyClusters
                                ? (1 + confidenceLevel) / 2
                                : confidenceLevel,
                            variation.Clusters - 1
                        )
                    : 0
            )
            .DefaultIfEmpty()
            .Max();
}

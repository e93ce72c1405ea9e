namespace StabilityStudy.Statistics;

/// <summary>Remarks that more than one method gives, so that they read the same everywhere.</summary>
internal static class AssumptionNote
{
    /// <summary>A value was computed although there is no spread.</summary>
    public static EstimateNote ZeroSpread { get; } =
        new(
            AssumptionCode.ZeroSpread,
            "All values are the same; the interval has no width and says nothing about the spread that rounding hides."
        );

    /// <summary>A rank was taken from an approximation.</summary>
    public static EstimateNote ApproximateRank { get; } =
        new(
            AssumptionCode.ApproximateRank,
            "The ranks of the interval come from the normal approximation of the signed-rank distribution."
        );

    /// <summary>There is one cluster only.</summary>
    public static EstimateNote OneCluster { get; } =
        new(
            AssumptionCode.OneCluster,
            "All values share one cluster, so the interval knows nothing about the error that the cluster's values share."
        );
}

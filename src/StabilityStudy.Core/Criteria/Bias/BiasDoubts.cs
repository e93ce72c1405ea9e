using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Criteria.Bias;

/// <summary>Why the interval of a mean change cannot be trusted, in a fixed order. One doubt makes the criterion inconclusive.</summary>
internal static class BiasDoubts
{
    /// <summary>Every doubt; empty when there is none.</summary>
    public static ImmutableArray<VerdictReason> Of(
        ImmutableArray<ReadMean> readings,
        CellEvidence cell
    )
    {
        var measured = readings[0];
        var withoutValue = cell
            .Readings.SelectMany(reading => reading.WithoutValueAtCollection)
            .Distinct()
            .ToImmutableArray();
        return
        [
            .. new VerdictReason?[]
            {
                cell.FewClustersOfMean,
                cell.Data.Pairs.Difference is [var first, ..]
                && (
                    measured.Mean.Value?.BySpecimen.StandardDeviation == 0
                    || cell.Data.Pairs.Difference.All(difference => difference == first)
                )
                && measured.Changes is { } changes
                    ? new SameChangesReason(changes.Resolution)
                    : null,
                OfUncounted(cell.Uncounted),
                withoutValue.IsEmpty ? null : new NoValueAtCollectionReason(withoutValue),
                measured.Spread.NotComputable is { Kind: Refusal.TooFewForSkewness } tooFew
                    ? new NotComputableReason(tooFew)
                    : null,
            }.OfType<VerdictReason>(),
        ];
    }

    /// <summary>Specimens that neither a mean nor a share counts are a doubt; null when there are none.</summary>
    public static VerdictReason? OfUncounted(int uncounted) =>
        uncounted == 0 ? null : new UncountedPairsReason(uncounted);
}

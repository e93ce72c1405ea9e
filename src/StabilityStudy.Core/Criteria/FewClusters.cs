using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// Results of few collection days or few runs do not carry a criterion: what a run adds to all its results does not average out
/// over specimens. Where both results of each pair were tested in one run they share its error, and the number of runs is not asked; that of days is.
/// </summary>
internal static class FewClusters
{
    /// <summary>With one day or run nothing tells its error from the change, whatever a protocol asks.</summary>
    private const int Fewest = 2;

    /// <summary>How many of each are enough.</summary>
    /// <param name="minimum">The minimum of the protocol.</param>
    public static int Required(int minimum) => Math.Max(minimum, Fewest);

    /// <summary>The doubt; null when there is none.</summary>
    /// <param name="counts">Days and runs of the pairs that count.</param>
    /// <param name="sameRun">Whether both results of each pair come from one run.</param>
    /// <param name="minimum">Fewest days, and runs of either kind, that the protocol asks.</param>
    public static VerdictReason? Of(ClusterCounts counts, bool sameRun, int minimum)
    {
        var required = Required(minimum);
        return counts.Days < required ? new TooFewDaysReason(counts.Days, required)
            : sameRun ? null
            : counts.BaselineRuns < required
                ? new TooFewRunsReason(IntervalSource.BaselineRuns, counts.BaselineRuns, required)
            : counts.DelayedRuns < required
                ? new TooFewRunsReason(IntervalSource.DelayedRuns, counts.DelayedRuns, required)
            : null;
    }
}

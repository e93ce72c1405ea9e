using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Core.Criteria;

/// <summary>What the criteria of a cell are judged on.</summary>
/// <param name="Readings">The compared pairs as numbers, in every reading that the study calls for; as measured is the first.</param>
/// <param name="Pairs">Every pair as measured.</param>
/// <param name="Context">What they are read against.</param>
internal sealed record CellEvidence(
    ImmutableArray<PairReading> Readings,
    ImmutableArray<PairRecord> Pairs,
    CellContext Context
)
{
    private ImmutableArray<VerdictReason?> _fewClustersOfShare;

    /// <summary>The evidence of a cell's pairs.</summary>
    public static CellEvidence From(ImmutableArray<PairRecord> pairs, CellContext context) =>
        new(PairReading.All(pairs, context, []), pairs, context);

    /// <summary>The evidence if some pairs were otherwise.</summary>
    /// <param name="pairs">The pairs of the same specimens in the same order.</param>
    public CellEvidence WithPairs(ImmutableArray<PairRecord> pairs) =>
        new(PairReading.All(pairs, Context, Readings), pairs, Context);

    /// <summary>The compared pairs as measured.</summary>
    public CellData Data => Readings[0].Data;

    /// <summary>Without some compared pairs, by which means and lines go; counts keep them.</summary>
    public CellEvidence WithoutPairs(Func<PairRecord, bool> leaveOut) =>
        this with
        {
            Readings = [.. Readings.Select(reading => reading.WithoutPairs(leaveOut))],
        };

    /// <summary>Why results of so few days or runs do not carry a mean, in the reading with the fewest; null when they do.</summary>
    public VerdictReason? FewClustersOfMean =>
        Readings
            .Select(reading =>
                FewClusters.Of(
                    reading.Data.Errors.Counts,
                    Data.SameRun,
                    Context.Protocol.MinimumDays
                )
            )
            .FirstOrDefault(reason => reason is not null);

    /// <summary>The same of the pairs that a share counts and that were tested both times; found at the first question.</summary>
    public VerdictReason? FewClustersOfShare
    {
        get
        {
            if (_fewClustersOfShare.IsDefault)
            {
                _fewClustersOfShare = [ReasonOfShare()];
            }

            return _fewClustersOfShare[0];
        }
    }

    // What a value at collection is computed from has the same days and runs.
    private VerdictReason? ReasonOfShare() =>
        Readings
            .Where(reading => reading.FromBaseline is null)
            .Select(reading =>
                FewClusters.Of(
                    reading.Data.CountsUpTo(
                        FewClusters.Required(Context.Protocol.MinimumDays),
                        reading.Pairs.Keep(pair =>
                            pair.CountsForAgreement
                            && pair is { Baseline: not null, Delayed.TestedAt: not null }
                        )
                    ),
                    Data.SameRun,
                    Context.Protocol.MinimumDays
                )
            )
            .FirstOrDefault(reason => reason is not null);

    /// <summary>How many pairs neither a mean nor any individual criterion counts: failed, beyond the measuring interval, missing without a reason.</summary>
    public int Uncounted => UncountedAmong(Pairs);

    /// <summary>The same among other pairs of the sequence.</summary>
    public int UncountedAmong(ImmutableArray<PairRecord> pairs) =>
        Context.Applying.Any(item => item.Criterion is IndividualCriterion)
            ? 0
            : pairs.Count(pair => pair.CountsForAgreement && pair.Status != PairStatus.Compared);
}

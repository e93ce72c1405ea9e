using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Core.Criteria;

/// <summary>What the criteria of a cell are judged on.</summary>
/// <param name="Data">The compared pairs as numbers, by which means and lines go.</param>
/// <param name="Pairs">Every pair, by which counts and drift go.</param>
/// <param name="Context">What they are read against.</param>
internal sealed record CellEvidence(
    CellData Data,
    ImmutableArray<PairRecord> Pairs,
    CellContext Context
)
{
    /// <summary>The evidence of a cell's pairs.</summary>
    public static CellEvidence From(ImmutableArray<PairRecord> pairs, CellContext context) =>
        new(context.DataOf(pairs), pairs, context);

    /// <summary>Why results of so few collection days do not carry a mean; null when they do.</summary>
    public VerdictReason? FewDaysOfMean =>
        FewDays.Of(Data.DayCount, Data.SameRun, Context.Protocol.MinimumDays);

    /// <summary>The same of the pairs that a share counts.</summary>
    public VerdictReason? FewDaysOfShare(ImmutableArray<PairRecord> counted) =>
        FewDays.Of(
            counted.Select(pair => pair.CollectionDay).Distinct().Count(),
            Data.SameRun,
            Context.Protocol.MinimumDays
        );

    /// <summary>How many pairs neither a mean nor any individual criterion counts: failed, beyond the measuring interval, missing without a reason.</summary>
    public int Uncounted => UncountedAmong(Pairs);

    /// <summary>The same among other pairs of the sequence.</summary>
    public int UncountedAmong(ImmutableArray<PairRecord> pairs) =>
        Context.Applying.Any(item => item.Criterion is IndividualCriterion)
            ? 0
            : pairs.Count(pair => pair.CountsForAgreement && pair.Status != PairStatus.Compared);
}

namespace StabilityStudy.Core.Conclusions;

/// <summary>Applies the protocol's criteria to the pairs of a cell, without regard to other time points.</summary>
internal static class CellEvaluation
{
    /// <summary>What each criterion that applies to the analyte and group says, in the order of the protocol.</summary>
    public static ImmutableArray<CriterionResult> Evaluate(CellEvidence cell) =>
        [.. cell.Context.Applying.Select(item => item.Criterion.Evaluate(item.Limit, cell))];

    /// <summary>The same of the pairs of a cell.</summary>
    public static ImmutableArray<CriterionResult> Evaluate(
        ImmutableArray<PairRecord> pairs,
        CellContext context
    ) => Evaluate(CellEvidence.From(pairs, context));

    /// <summary>Whether every criterion is met, and there is one; those that take many fits are asked last.</summary>
    /// <param name="pairs">The pairs of the cell.</param>
    /// <param name="context">What they are read against.</param>
    public static bool IsSupported(ImmutableArray<PairRecord> pairs, CellContext context)
    {
        var applying = context.Applying;
        var cell = CellEvidence.From(pairs, context);
        return !applying.IsEmpty
            && applying
                .OrderBy(item =>
                    item.Criterion.Kind is CriterionKind.DecisionLevel or CriterionKind.Drift
                )
                .All(item => item.Criterion.IsMet(item.Limit, cell));
    }

    /// <summary>No criterion: not assessed. Any not met: not supported. All met: supported. Else inconclusive.</summary>
    public static Conclusion Conclude(ImmutableArray<CriterionResult> results) =>
        results.IsEmpty ? Conclusion.NotAssessed
        : results.Any(result => result.Verdict == Verdict.NotMet) ? Conclusion.NotSupported
        : results.All(result => result.Verdict == Verdict.Met) ? Conclusion.Supported
        : Conclusion.Inconclusive;

    /// <summary>
    /// The conclusions of time points in ascending order: each at its full level, stopping at the first that is not
    /// supported. The first time point beyond the truth is the only one at which a false claim can begin, so the error of a sequence is that
    /// of one time point.
    /// </summary>
    public static ImmutableArray<Conclusion> InSequence(ImmutableArray<Conclusion> own)
    {
        var supported = own.TakeWhile(conclusion => conclusion == Conclusion.Supported).Count();
        return
        [
            .. own.Select((conclusion, i) => i <= supported ? conclusion : Conclusion.NotReached),
        ];
    }
}

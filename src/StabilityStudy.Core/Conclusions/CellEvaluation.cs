using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Conclusions;

/// <summary>Applies the protocol's criteria to the pairs of a cell, without regard to other time points.</summary>
internal static class CellEvaluation
{
    /// <summary>What each criterion that applies to the analyte and group says, in the order of the protocol.</summary>
    public static ImmutableArray<CriterionResult> Evaluate(
        ImmutableArray<PairRecord> pairs,
        CellContext context
    ) => Evaluate(context.DataOf(pairs), pairs, context);

    /// <summary>The same with means and lines of other compared pairs than those among <paramref name="pairs"/>, which counts and drift go by.</summary>
    public static ImmutableArray<CriterionResult> Evaluate(
        CellData data,
        ImmutableArray<PairRecord> pairs,
        CellContext context
    ) =>
        [
            .. context.Applying.Select(item =>
                Evaluate(item.Criterion, item.Limit, data, pairs, context)
            ),
        ];

    private static CriterionResult Evaluate(
        Criterion criterion,
        Limit? limit,
        CellData data,
        ImmutableArray<PairRecord> pairs,
        CellContext context
    ) =>
        (criterion, limit) switch
        {
            (BiasCriterion bias, { } held) => BiasEvaluation.Evaluate(
                bias,
                held,
                data,
                context.Protocol.MinimumDays,
                Uncounted(pairs, context)
            ),
            (IndividualCriterion individual, { } held) => IndividualEvaluation.Evaluate(
                individual,
                held,
                pairs,
                context.Protocol.MinimumDays,
                data.SameRun
            ),
            (DecisionLevelCriterion levels, { } held) => DecisionLevelEvaluation.Evaluate(
                levels,
                held,
                data,
                context,
                Uncounted(pairs, context)
            ),
            (DriftCriterion drift, { } held) => DriftEvaluation.Evaluate(
                drift,
                held,
                context.Earlier.Add(pairs),
                context
            ),
            (ReclassificationCriterion sides, _) => ReclassificationEvaluation.Evaluate(
                sides,
                pairs,
                context,
                data.SameRun
            ),
            (ClassificationCriterion classes, _) => ClassificationEvaluation.Evaluate(
                classes,
                pairs,
                context,
                data.SameRun
            ),
            _ => throw new ArgumentException(
                $"Criterion {criterion.Id} names no limit of the protocol.",
                nameof(criterion)
            ),
        };

    /// <summary>Pairs that neither a mean nor any individual criterion counts.</summary>
    internal static int Uncounted(ImmutableArray<PairRecord> pairs, CellContext context) =>
        context.Applying.Any(item => item.Criterion is IndividualCriterion)
            ? 0
            : pairs.Count(pair => pair.CountsForAgreement && pair.Status != PairStatus.Compared);

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

using System.Collections.Immutable;
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
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var results = Means(pairs, protocol, analyte, group)
            .Concat(Shares(pairs, protocol, analyte, group))
            .ToDictionary(result => result.Criterion);
        return [.. Applying(protocol, analyte, group).Select(item => results[item.Criterion.Id])];
    }

    /// <summary>What the bias criteria say.</summary>
    public static ImmutableArray<CriterionResult> Means(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    ) => Means(CellData.Of(pairs, analyte.Decimals), pairs, protocol, analyte, group);

    /// <summary>What the bias criteria say of other compared pairs than those among <paramref name="pairs"/>.</summary>
    public static ImmutableArray<CriterionResult> Means(
        CellData data,
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var applying = Applying(protocol, analyte, group);
        var uncounted = applying.Any(item => item.Criterion is IndividualCriterion)
            ? 0
            : pairs.Count(pair => pair.CountsForAgreement && pair.Status != PairStatus.Compared);
        return
        [
            .. applying
                .Where(item => item.Criterion is BiasCriterion)
                .Select(item =>
                    BiasEvaluation.Evaluate(
                        (BiasCriterion)item.Criterion,
                        item.Limit,
                        data,
                        protocol.MinimumDays,
                        uncounted
                    )
                ),
        ];
    }

    /// <summary>What the individual criteria say.</summary>
    public static ImmutableArray<CriterionResult> Shares(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    ) =>
        [
            .. Applying(protocol, analyte, group)
                .Where(item => item.Criterion is IndividualCriterion)
                .Select(item =>
                    IndividualEvaluation.Evaluate(
                        (IndividualCriterion)item.Criterion,
                        item.Limit,
                        pairs
                    )
                ),
        ];

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

    private static ImmutableArray<(Criterion Criterion, Limit Limit)> Applying(
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    ) =>
        [
            .. protocol
                .Criteria.Where(criterion =>
                    criterion.Groups.IsEmpty || criterion.Groups.Contains(group.Id)
                )
                .SelectMany(criterion =>
                    criterion
                        .Limits.Where(choice => choice.Analyte == analyte.Id)
                        .Select(choice =>
                            (criterion, protocol.Limits.Single(limit => limit.Id == choice.Limit))
                        )
                ),
        ];
}

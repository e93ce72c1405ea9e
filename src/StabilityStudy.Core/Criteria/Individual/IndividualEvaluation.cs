using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>
/// Decides an individual criterion: met when no more specimens are outside than their number allows (exact one-sided
/// bound), with every undecidable specimen counted outside; not met when the upper bound stays below the required share
/// even with every undecidable specimen counted inside; else inconclusive.
/// </summary>
/// <remarks>
/// Two results beyond the same limit of measurement agree, but they may differ by more than is allowed. So the share is
/// judged twice, over all and without such pairs: met needs both, and either alone can refute. The bounds are shown;
/// one predicate on whole numbers decides what is met.
/// </remarks>
internal static class IndividualEvaluation
{
    /// <param name="criterion">The criterion.</param>
    /// <param name="limit">Its limit.</param>
    /// <param name="pairs">The pairs of a cell.</param>
    /// <param name="minimumDays">Fewest collection days on which it can be met.</param>
    /// <param name="sameRun">Whether both results of each compared pair come from one run.</param>
    public static IndividualResult Evaluate(
        IndividualCriterion criterion,
        Limit limit,
        ImmutableArray<PairRecord> pairs,
        int minimumDays,
        bool sameRun
    ) =>
        OfCounts(
            criterion,
            limit,
            AgreementCount.Of(
                pairs,
                ChangeOnScale.AllowanceOf(limit),
                criterion.Rule == DecisionRule.Confidence
                    ? RunShift.Of(pairs, sameRun, criterion.ConfidenceLevel)
                    : null
            ),
            minimumDays,
            sameRun
        );

    /// <summary>The same from counts.</summary>
    internal static IndividualResult OfCounts(
        IndividualCriterion criterion,
        Limit limit,
        AgreementCount agreement,
        int minimumDays,
        bool sameRun
    )
    {
        var required = (double)(criterion.SharePercentMinimum / 100);
        if (agreement.Counted == 0)
        {
            return new IndividualResult(
                criterion.Id,
                limit,
                Verdict.Inconclusive,
                [new NothingCountedReason()],
                criterion.ConfidenceLevel,
                agreement,
                required,
                Estimate.Refused<ProportionBounds>(Refusal.NothingCounted),
                null
            );
        }

        var decided = Decide(criterion, agreement);
        var reasons = ImmutableArray.CreateBuilder<VerdictReason>();
        var verdict = decided.Verdict;
        if (
            verdict == Verdict.Met
            && FewDays.Of(agreement.Days, sameRun, minimumDays) is { } fewDays
        )
        {
            verdict = Verdict.Inconclusive;
            reasons.Add(fewDays);
        }

        reasons.Add(decided.Reason);
        if (criterion.Rule == DecisionRule.PointOnly)
        {
            reasons.Add(new ShareAloneReason());
        }

        if (agreement.Undecidable > 0)
        {
            reasons.Add(Undecided(criterion, agreement));
        }

        return new IndividualResult(
            criterion.Id,
            limit,
            verdict,
            reasons.ToImmutable(),
            criterion.ConfidenceLevel,
            agreement,
            required,
            Estimate.Of(
                ClopperPearson.Bounds(
                    agreement.Inside,
                    agreement.Counted,
                    criterion.ConfidenceLevel
                )
            ),
            MostOutside(criterion, agreement.Counted - agreement.AgreeingBeyond)
        );
    }

    /// <summary>Most specimens outside with which so many specimens meet the criterion; null when none can. No number of specimens shows a share of 100 %.</summary>
    internal static int? MostOutside(IndividualCriterion criterion, int counted) =>
        counted == 0 ? null
        : criterion.Rule == DecisionRule.PointOnly
            ? (int)decimal.Floor(counted * (100 - criterion.SharePercentMinimum) / 100)
        : criterion.SharePercentMinimum >= 100 ? null
        : AcceptanceNumber.Of(
            counted,
            (double)(criterion.SharePercentMinimum / 100),
            criterion.ConfidenceLevel
        );

    private static (Verdict Verdict, VerdictReason Reason) Decide(
        IndividualCriterion criterion,
        AgreementCount agreement
    )
    {
        var percent = criterion.SharePercentMinimum;
        var withoutAgreeing = agreement.Counted - agreement.AgreeingBeyond;
        return IsRefuted(criterion, agreement, agreement.Counted)
            || IsRefuted(criterion, agreement, withoutAgreeing)
                ? (Verdict.NotMet, new ShareRefutedReason(percent))
            : !Allows(criterion, agreement.Counted, agreement.Outside)
                ? (Verdict.Inconclusive, new ShareOpenReason(percent))
            : !Allows(criterion, agreement.Measured, 0)
                ? (Verdict.Inconclusive, new TooFewMeasuredReason(percent))
            : !Allows(criterion, withoutAgreeing, agreement.Outside)
                ? (
                    Verdict.Inconclusive,
                    new AgreeingBeyondLimitReason(percent, agreement.AgreeingBeyond)
                )
            : !Allows(criterion, withoutAgreeing, agreement.OutsideIfMoved)
                ? (
                    Verdict.Inconclusive,
                    new OpenIfRunsMovedReason(
                        agreement.RunShiftPercent ?? 0,
                        new MoreOutsideIfMoved(agreement.OutsideIfMoved, agreement.Counted, percent)
                    )
                )
            : (Verdict.Met, new ShareShownReason(percent));
    }

    private static bool Allows(IndividualCriterion criterion, int counted, int outside) =>
        outside <= MostOutside(criterion, counted);

    /// <summary>Whether so many specimens refute the share even with every undecidable one inside.</summary>
    private static bool IsRefuted(
        IndividualCriterion criterion,
        AgreementCount agreement,
        int counted
    )
    {
        var outside = agreement.Outside - agreement.Undecidable;
        return counted > 0
            && (
                criterion.Rule == DecisionRule.PointOnly
                    ? !Allows(criterion, counted, outside)
                    : ClopperPearson
                        .Bounds(counted - outside, counted, criterion.ConfidenceLevel)
                        .OneSidedUpper < (double)(criterion.SharePercentMinimum / 100)
            );
    }

    private static UndecidableReason Undecided(
        IndividualCriterion criterion,
        AgreementCount agreement
    )
    {
        var favorable = ClopperPearson.Bounds(
            agreement.Inside + agreement.Undecidable,
            agreement.Counted,
            criterion.ConfidenceLevel
        );
        return new UndecidableReason(
            agreement.Undecidable,
            agreement.Counted,
            favorable.OneSidedLower
        );
    }
}

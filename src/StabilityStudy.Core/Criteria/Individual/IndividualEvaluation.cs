using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
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
            const string reason = "no specimen can be counted";
            return new IndividualResult(
                criterion.Id,
                limit,
                Verdict.Inconclusive,
                [new(AssumptionCode.TooFewValues, reason)],
                criterion.ConfidenceLevel,
                agreement,
                required,
                Estimate.Refused<ProportionBounds>(AssumptionCode.TooFewValues, reason),
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
            reasons.Add(
                new(
                    "point-share-no-error-control",
                    "the rule holds the observed share alone to the required one, so the chance of a false claim is not controlled"
                )
            );
        }

        if (agreement.Undecidable > 0)
        {
            reasons.Add(UndecidableReason(criterion, agreement));
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
        var percent = criterion.SharePercentMinimum.ToString("0.##", CultureInfo.InvariantCulture);
        var withoutAgreeing = agreement.Counted - agreement.AgreeingBeyond;
        if (
            IsRefuted(criterion, agreement, agreement.Counted)
            || IsRefuted(criterion, agreement, withoutAgreeing)
        )
        {
            return (
                Verdict.NotMet,
                new(
                    "share-refuted",
                    $"the data show that fewer than {percent} % of specimens stay within the allowable difference"
                )
            );
        }

        if (!Allows(criterion, agreement.Counted, agreement.Outside))
        {
            return (
                Verdict.Inconclusive,
                new(
                    "share-open",
                    $"the data leave open whether {percent} % of specimens stay within the allowable difference"
                )
            );
        }

        if (!Allows(criterion, agreement.Measured, 0))
        {
            return (
                Verdict.Inconclusive,
                new(
                    "too-few-measured",
                    $"too few pairs were measured both times to show {percent} %, were they all within the allowable difference; two results beyond a limit agree without showing by how much they differ"
                )
            );
        }

        if (!Allows(criterion, withoutAgreeing, agreement.Outside))
        {
            return (
                Verdict.Inconclusive,
                new(
                    "agreeing-beyond-limit",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{percent} % is reached only with {Counted.Of(agreement.AgreeingBeyond, "specimen")} whose results both lie beyond a limit of measurement, which agree without showing by how much they differ"
                    )
                )
            );
        }

        return Allows(criterion, withoutAgreeing, agreement.OutsideIfMoved)
            ? (
                Verdict.Met,
                new(
                    "share-shown",
                    $"the data show that at least {percent} % of specimens stay within the allowable difference"
                )
            )
            : (
                Verdict.Inconclusive,
                RunShift.Reason(
                    agreement.RunShiftPercent ?? 0,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{agreement.OutsideIfMoved} of {agreement.Counted} would then be outside, which leaves {percent} % open"
                    )
                )
            );
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

    private static VerdictReason UndecidableReason(
        IndividualCriterion criterion,
        AgreementCount agreement
    )
    {
        var favorable = ClopperPearson.Bounds(
            agreement.Inside + agreement.Undecidable,
            agreement.Counted,
            criterion.ConfidenceLevel
        );
        return new(
            "undecidable-counted-outside",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{agreement.Undecidable} of {agreement.Counted} specimens are undecidable and count as outside; were they inside, the lower bound of the share would be {100 * favorable.OneSidedLower:0.##} %"
            )
        );
    }
}

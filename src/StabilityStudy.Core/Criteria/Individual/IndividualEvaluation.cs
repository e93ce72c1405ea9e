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
    /// <param name="cell">What it is judged on.</param>
    public static IndividualResult Evaluate(
        IndividualCriterion criterion,
        Limit limit,
        CellEvidence cell
    ) =>
        OfCounts(
            criterion,
            limit,
            [
                .. cell.Readings.Select(reading =>
                    (
                        reading.Kind,
                        AgreementCount.Of(
                            reading,
                            ChangeOnScale.AllowanceOf(limit),
                            cell.Context,
                            criterion.Rule == DecisionRule.Confidence
                                ? criterion.ConfidenceLevel
                                : null
                        )
                    )
                ),
            ],
            cell.FewClustersOfShare
        );

    /// <summary>The same from counts, one a reading.</summary>
    internal static IndividualResult OfCounts(
        IndividualCriterion criterion,
        Limit limit,
        ImmutableArray<(ChangeReading Reading, AgreementCount Agreement)> counts,
        VerdictReason? fewClusters
    )
    {
        var required = (double)(criterion.SharePercentMinimum / 100);
        var readings = counts
            .Select(item =>
                (
                    Count: item,
                    Decided: item.Agreement.Counted == 0
                        ? (Verdict: Verdict.Inconclusive, Reason: new NothingCountedReason())
                        : Decide(criterion, item.Agreement)
                )
            )
            .ToImmutableArray();
        var ((reading, agreement), decided) = InEveryReading.Deciding(
            readings,
            item => item.Decided.Verdict,
            item => Room(criterion, item.Count.Agreement)
        );
        var verdict = InEveryReading.Of(readings.Select(item => item.Decided.Verdict));
        var reasons = ImmutableArray.CreateBuilder<VerdictReason>();
        if (verdict == Verdict.Met && fewClusters is not null)
        {
            verdict = Verdict.Inconclusive;
            reasons.Add(fewClusters);
        }

        reasons.Add(decided.Reason);
        if (criterion.Rule == DecisionRule.PointOnly && agreement.Counted > 0)
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
            ShareKept.Bounds(agreement.Inside, agreement.Counted, criterion.ConfidenceLevel),
            MostOutside(criterion, agreement.Counted - agreement.AgreeingBeyond)
        )
        {
            Reading = reading,
            Readings =
            [
                .. readings.Select(item => new ReadAgreement(
                    item.Count.Reading,
                    item.Count.Agreement,
                    item.Decided.Verdict
                )),
            ],
        };
    }

    /// <summary>How many more specimens could be outside than are with every change moved; the larger the better.</summary>
    private static double Room(IndividualCriterion criterion, AgreementCount agreement) =>
        (MostOutside(criterion, agreement.Counted - agreement.AgreeingBeyond) ?? -1)
        - agreement.OutsideIfMoved;

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
                        agreement.RunShiftPercent,
                        new MoreOutsideIfMoved(agreement.OutsideIfMoved, agreement.Counted, percent)
                    )
                )
            : (Verdict.Met, new ShareShownReason(percent));
    }

    private static bool Allows(IndividualCriterion criterion, int counted, int outside) =>
        outside <= MostOutside(criterion, counted);

    /// <summary>Whether so many specimens refute the share even with every undecidable one inside and every change moved by half of what the runs could have added.</summary>
    private static bool IsRefuted(
        IndividualCriterion criterion,
        AgreementCount agreement,
        int counted
    )
    {
        return counted > 0
            && (
                criterion.Rule == DecisionRule.PointOnly
                    ? !Allows(criterion, counted, agreement.SurelyOutside)
                    : ClopperPearson.OneSidedUpper(
                        counted - agreement.SurelyOutsideIfHalfMoved,
                        counted,
                        criterion.ConfidenceLevel
                    ) < (double)(criterion.SharePercentMinimum / 100)
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

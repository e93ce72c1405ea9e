using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Decides an individual criterion: met when the exact one-sided lower bound of the share within the allowable
/// difference reaches the required share, not met when the upper bound stays below it, else inconclusive.
/// </summary>
internal static class IndividualEvaluation
{
    public static IndividualResult Evaluate(
        IndividualCriterion criterion,
        Limit limit,
        ImmutableArray<PairRecord> pairs
    )
    {
        var agreement = AgreementCount.Of(pairs, ChangeOnScale.AllowanceOf(limit));
        var required = (double)(criterion.SharePercentMinimum / 100);
        if (agreement.Counted == 0)
        {
            const string reason = "no specimen can be counted";
            return new IndividualResult(
                criterion.Id,
                limit,
                Verdict.Inconclusive,
                [new(AssumptionCode.TooFewValues, reason)],
                agreement,
                required,
                Estimate.Refused<ProportionBounds>(AssumptionCode.TooFewValues, reason),
                null
            );
        }

        var bounds = ClopperPearson.Bounds(
            agreement.Inside,
            agreement.Counted,
            criterion.ConfidenceLevel
        );
        var (verdict, reasonGiven) = Decide(bounds, required);
        return new IndividualResult(
            criterion.Id,
            limit,
            verdict,
            [reasonGiven],
            agreement,
            required,
            Estimate.Of(bounds),
            SmallestSampleSize.MostOutside(agreement.Counted, required, criterion.ConfidenceLevel)
        );
    }

    private static (Verdict Verdict, VerdictReason Reason) Decide(
        ProportionBounds bounds,
        double required
    )
    {
        var requiredPercent = (100 * required).ToString("0.##", CultureInfo.InvariantCulture);
        if (bounds.OneSidedLower >= required)
        {
            return (
                Verdict.Met,
                new(
                    "share-shown",
                    $"the data show that at least {requiredPercent} % of specimens stay within the allowable difference"
                )
            );
        }

        return bounds.OneSidedUpper < required
            ? (
                Verdict.NotMet,
                new(
                    "share-refuted",
                    $"the data show that fewer than {requiredPercent} % of specimens stay within the allowable difference"
                )
            )
            : (
                Verdict.Inconclusive,
                new(
                    "share-open",
                    $"the data leave open whether {requiredPercent} % of specimens stay within the allowable difference"
                )
            );
    }
}

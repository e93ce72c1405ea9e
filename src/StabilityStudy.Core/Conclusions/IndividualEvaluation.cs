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
/// difference reaches the required share, with every undecidable specimen counted outside; not met when the upper bound
/// stays below it even with every undecidable specimen counted inside; else inconclusive.
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
                criterion.ConfidenceLevel,
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
        var favorable = ClopperPearson.Bounds(
            agreement.Inside + agreement.Undecidable,
            agreement.Counted,
            criterion.ConfidenceLevel
        );
        var measured = pairs.Count(pair => pair.Status == PairStatus.Compared);
        var enoughMeasured = MostOutside(measured, required, criterion.ConfidenceLevel) is not null;
        var (verdict, reasonGiven) = Decide(bounds, favorable, required, enoughMeasured);
        return new IndividualResult(
            criterion.Id,
            limit,
            verdict,
            agreement.Undecidable == 0
                ? [reasonGiven]
                : [reasonGiven, UndecidableReason(agreement, favorable)],
            criterion.ConfidenceLevel,
            agreement,
            required,
            Estimate.Of(bounds),
            MostOutside(agreement.Counted, required, criterion.ConfidenceLevel)
        );
    }

    private static (Verdict Verdict, VerdictReason Reason) Decide(
        ProportionBounds bounds,
        ProportionBounds favorable,
        double required,
        bool enoughMeasured
    )
    {
        var percent = Percent(required);
        if (bounds.OneSidedLower >= required)
        {
            return enoughMeasured
                ? (
                    Verdict.Met,
                    new(
                        "share-shown",
                        $"the data show that at least {percent} % of specimens stay within the allowable difference"
                    )
                )
                : (
                    Verdict.Inconclusive,
                    new(
                        "too-few-measured",
                        $"too few pairs were measured both times to show {percent} %, were they all within the allowable difference; two results beyond a limit agree without showing by how much they differ"
                    )
                );
        }

        return favorable.OneSidedUpper < required
            ? (
                Verdict.NotMet,
                new(
                    "share-refuted",
                    $"the data show that fewer than {percent} % of specimens stay within the allowable difference"
                )
            )
            : (
                Verdict.Inconclusive,
                new(
                    "share-open",
                    $"the data leave open whether {percent} % of specimens stay within the allowable difference"
                )
            );
    }

    private static VerdictReason UndecidableReason(
        AgreementCount agreement,
        ProportionBounds favorable
    ) =>
        new(
            "undecidable-counted-outside",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{agreement.Undecidable} of {agreement.Counted} specimens are undecidable and count as outside; were they inside, the lower bound of the share would be {Percent(favorable.OneSidedLower)} %"
            )
        );

    /// <summary>No number of specimens shows a share of 100 %.</summary>
    private static int? MostOutside(int counted, double required, double confidenceLevel) =>
        counted == 0 || required >= 1
            ? null
            : SmallestSampleSize.MostOutside(counted, required, confidenceLevel);

    private static string Percent(double share) =>
        (100 * share).ToString("0.##", CultureInfo.InvariantCulture);
}

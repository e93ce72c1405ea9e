using System.Collections.Immutable;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// The number of specimens with which a new study would decide an inconclusive time point, were the truth what was
/// observed. A criterion that is met already counts too, because the new study has to meet it again.
/// </summary>
internal static class SpecimensStillNeeded
{
    /// <summary>Wanted chance of meeting every criterion, a usual one in planning.</summary>
    private const double Power = 0.80;

    /// <summary>More than a study of one laboratory collects.</summary>
    private const int MostSpecimens = 200;

    /// <summary>Reasons for which a criterion stays open however many specimens there are.</summary>
    private static readonly ImmutableArray<string> s_notOfNumber =
    [
        "too-few-days",
        "zero-spread",
        "uncounted-pairs",
        "skewed",
        "too-few-measured",
        "agreeing-beyond-limit",
        "open-if-runs-moved",
    ];

    /// <summary>The number or why there is none; null when the conclusion is another, or a criterion is open that no number can be computed for.</summary>
    /// <param name="own">What the time point's data alone conclude.</param>
    /// <param name="criteria">What each criterion says.</param>
    /// <param name="doubts">What keeps the time point from a conclusion beside its criteria.</param>
    public static MoreSpecimens? Of(
        Conclusion own,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<VerdictReason> doubts
    )
    {
        var open = criteria.Where(result => result.Verdict != Verdict.Met).ToImmutableArray();
        if (own != Conclusion.Inconclusive || !open.All(HasFigures))
        {
            return null;
        }

        if (open.Select(AtOrBeyond).FirstOrDefault(reason => reason is not null) is { } beyond)
        {
            return new(null, true, beyond);
        }

        var beside = open.SelectMany(result => result.Reasons)
            .Where(reason => s_notOfNumber.Contains(reason.Code))
            .Concat(doubts)
            .Select(reason => reason.Text)
            .Distinct()
            .ToImmutableArray();
        if (!open.Any(IsOpenByNumber))
        {
            return beside.IsEmpty ? null : new(null, true, string.Join("; ", beside));
        }

        // Each of k criteria may fail with a k-th of the chance, so that all are met with the wanted one, however they go together.
        var computable = criteria.Where(HasPower).ToImmutableArray();
        var each = 1 - ((1 - Power) / computable.Length);
        var (criterion, specimens) = computable
            .Select(result => (result.Criterion, Specimens: SmallestOf(result, each)))
            .MaxBy(item => item.Specimens ?? int.MaxValue);
        return new(
            specimens,
            false,
            string.Join("; besides, ", [$"criterion {criterion} decides", .. beside])
        );
    }

    private static bool HasFigures(CriterionResult result) =>
        result switch
        {
            BiasResult bias => bias.Mean.TryGet(out _) && bias.Spread.TryGet(out _),
            IndividualResult individual => individual.Agreement.Counted > 0,
            _ => false,
        };

    /// <summary>Why the truth, were it what was observed, would not meet the criterion; null when it would.</summary>
    private static string? AtOrBeyond(CriterionResult result) =>
        result switch
        {
            BiasResult bias
                when bias.Mean.TryGet(out var mean)
                    && (mean.Mean <= bias.LowerLimit || mean.Mean >= bias.UpperLimit) =>
                $"the mean change of criterion {bias.Criterion} is at or beyond its limit",
            IndividualResult individual when Share(individual) <= individual.RequiredShare =>
                $"the share within of criterion {individual.Criterion} is at or below the required one",
            _ => null,
        };

    private static bool IsOpenByNumber(CriterionResult result) =>
        result.Reasons.Any(reason => reason.Code is "interval-reaches-limit" or "share-open")
        && HasPower(result);

    /// <summary>Whether a number of specimens can be computed: a rule on the estimate alone, or changes without spread, give none.</summary>
    private static bool HasPower(CriterionResult result) =>
        HasFigures(result)
        && !result.Reasons.Any(reason =>
            reason.Code
                is "zero-spread"
                    or "mean-only-no-error-control"
                    or "point-share-no-error-control"
        );

    private static int? SmallestOf(CriterionResult result, double power) =>
        result switch
        {
            BiasResult { LowerLimit: { } lower, UpperLimit: { } upper } bias
                when bias.Mean.TryGet(out var mean) => SmallestN.ForEquivalence(
                power,
                mean.Mean,
                mean.BySpecimen.StandardDeviation,
                lower,
                upper,
                bias.ConfidenceLevel,
                MostSpecimens
            ),
            IndividualResult individual => SmallestN.ForIndividual(
                power,
                Share(individual),
                individual.RequiredShare,
                individual.ConfidenceLevel,
                MostSpecimens
            ),
            _ => null,
        };

    private static double Share(IndividualResult individual) =>
        (double)individual.Agreement.Inside / individual.Agreement.Counted;
}

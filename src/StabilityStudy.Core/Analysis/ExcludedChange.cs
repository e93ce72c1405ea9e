using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// How large the change of an excluded pair was and whether it would have been outside the limits of single specimens, so
/// that the reader sees what the exclusion took out.
/// </summary>
internal static class ExcludedChange
{
    /// <summary>The change in words; that there is none to see when a result is missing or beyond the measuring interval.</summary>
    public static string Words(PairRecord pair, CellKey key, StudyProtocol protocol)
    {
        if (
            pair
            is not {
                Baseline.Result: MeasuredResult { Value: var baseline } before,
                Delayed.Result: MeasuredResult { Value: var delayed } after
            }
        )
        {
            return "it has no two numbers, so its change is not known";
        }

        var percent =
            baseline > 0
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" ({100 * (delayed - baseline) / baseline:+0.0;−0.0;0.0} %)"
                )
                : "";
        return $"its result changed from {before.Text} to {after.Text}{percent}{Standing(baseline, delayed, key, protocol)}";
    }

    /// <summary>Whether the change of a pair with two numbers is beyond a limit that applies.</summary>
    public static bool IsOutside(PairRecord pair, CellKey key, StudyProtocol protocol) =>
        pair
            is {
                Baseline.Result: MeasuredResult { Value: var baseline },
                Delayed.Result: MeasuredResult { Value: var delayed }
            }
        && LimitsOf(key, protocol).Any(limit => IsOutside(baseline, delayed, limit));

    private static string Standing(
        decimal baseline,
        decimal delayed,
        CellKey key,
        StudyProtocol protocol
    ) =>
        string.Concat(
            LimitsOf(key, protocol)
                .Select(limit =>
                    $", {(IsOutside(baseline, delayed, limit) ? "outside" : "inside")} the limit {limit.Id}"
                )
        );

    /// <summary>The limits of single specimens: one of a mean says nothing about one change.</summary>
    private static IEnumerable<Limit> LimitsOf(CellKey key, StudyProtocol protocol) =>
        protocol
            .Applying(key.Analyte, key.Group)
            .Where(item => item.Criterion is IndividualCriterion)
            .Select(item => item.Limit)
            .OfType<Limit>()
            .DistinctBy(limit => limit.Id);

    private static bool IsOutside(decimal baseline, decimal delayed, Limit limit) =>
        AllowableDifference.Judge(baseline, delayed, ChangeOnScale.AllowanceOf(limit))
        != AllowanceVerdict.Within;
}

using System.Globalization;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// How large the change of an excluded pair was and whether it would have been outside the limits, so that the reader
/// sees what the exclusion took out.
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
                    $" ({100 * (delayed - baseline) / baseline:+0.0;-0.0;0.0} %)"
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
        && protocol
            .Applying(key.Analyte, key.Group)
            .Select(item => item.Limit)
            .OfType<Limit>()
            .Any(limit =>
                AllowableDifference.Judge(baseline, delayed, ChangeOnScale.AllowanceOf(limit))
                == AllowanceVerdict.Outside
            );

    private static string Standing(
        decimal baseline,
        decimal delayed,
        CellKey key,
        StudyProtocol protocol
    )
    {
        var limits = protocol
            .Applying(key.Analyte, key.Group)
            .Select(item => item.Limit)
            .OfType<Limit>()
            .DistinctBy(limit => limit.Id);
        return string.Concat(
            limits.Select(limit =>
                AllowableDifference.Judge(baseline, delayed, ChangeOnScale.AllowanceOf(limit))
                == AllowanceVerdict.Within
                    ? $", inside the limit {limit.Id}"
                    : $", outside the limit {limit.Id}"
            )
        );
    }
}

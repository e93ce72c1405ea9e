using System.Text.Json;
using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Pipeline.Tests.Studies;

/// <summary>A reason by the name of its record, which says more than the record itself where a test fails.</summary>
internal static class ReasonName
{
    /// <summary>"too-few-days"; what a method refused by its code, and where an interval lies beside it.</summary>
    public static string Name(this VerdictReason reason) =>
        reason switch
        {
            NotComputableReason { Why.Code: var code } => code,
            IntervalReason { Place: var place } => "interval-"
                + JsonNamingPolicy.KebabCaseLower.ConvertName(place.ToString()),
            _ => JsonNamingPolicy.KebabCaseLower.ConvertName(
                reason.GetType().Name.Replace("Reason", "", StringComparison.Ordinal)
            ),
        };
}

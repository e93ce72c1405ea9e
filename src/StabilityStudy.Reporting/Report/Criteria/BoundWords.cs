using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Exact bounds of a share as the report prints them; none rounds across the share it is held to.</summary>
internal static class BoundWords
{
    /// <summary>"≥ 88.4 %"; "≤ 77.5 %" of a share that was shown to be too small.</summary>
    public static string Of(ProportionBounds bounds, double requiredShare, Verdict verdict) =>
        verdict == Verdict.NotMet && bounds.OneSidedUpper < requiredShare
            ? "≤\u00A0" + Upper(bounds, requiredShare)
            : "≥\u00A0" + Lower(bounds, requiredShare);

    /// <summary>The exact one-sided lower bound: "88.4 %".</summary>
    public static string Lower(ProportionBounds bounds, double share) =>
        NumberText.AgainstLimit(100 * bounds.OneSidedLower, 100 * share, 1) + " %";

    /// <summary>The exact one-sided upper bound.</summary>
    public static string Upper(ProportionBounds bounds, double share) =>
        NumberText.AgainstLimit(100 * bounds.OneSidedUpper, 100 * share, 1) + " %";
}

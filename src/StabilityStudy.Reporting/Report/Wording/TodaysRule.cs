namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Today's rule in words, with its second step where it has one.</summary>
internal static class TodaysRule
{
    /// <summary>"4 h", or "1 h, taken off the cells by then as plasma 4 h".</summary>
    public static string Of(WindowRule rule) =>
        DurationText.FormatWindow(rule.Time)
        + (
            rule.AsPlasma is { } plasma
                ? $", taken off the cells by then as plasma {DurationText.FormatWindow(plasma)}"
                : ""
        );
}

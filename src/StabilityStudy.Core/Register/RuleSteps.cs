namespace StabilityStudy.Core.Register;

/// <summary>What may be tested by today's rule of a row, which no new lot takes away: one step, or a second one for plasma that was off the cells in time.</summary>
internal static class RuleSteps
{
    /// <summary>What may be tested without an approved window: the step of today's rule that applies to what was done with the tube.</summary>
    public static TimeSpan For(StandingWindow item, BenchQuestion question) =>
        FirstStep(item, question.Day) is var first
        && SecondStep(item, question.Day) is { } second
        && question.WasSeparatedBy(first)
            ? second
            : first;

    /// <summary>Up to which age today's rule allows plasma that was off the cells in time; null where it does not, or a decision made the rule shorter.</summary>
    public static TimeSpan? SecondStep(StandingWindow item, DateOnly day) =>
        FirstStep(item, day) is var first
        && first == item.Window.Row.Today
        && item.Window.Handling?.TodaysRule.AsPlasma is { } second
        && second > first
            ? second
            : null;

    /// <summary>Today's rule, or what a decision in force made shorter, which no passed review makes longer again.</summary>
    public static TimeSpan FirstStep(StandingWindow item, DateOnly day) =>
        item.Report.Standing == ReportStanding.Decided
        && item.Report.From <= day
        && (item.Window.Interim ?? item.Window.Approved) is { } decided
        && decided < item.Window.Row.Today
            ? decided
            : item.Window.Row.Today;
}

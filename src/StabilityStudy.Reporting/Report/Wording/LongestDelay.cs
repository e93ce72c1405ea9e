namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>The longest actual delay among the compared pairs of a sequence whose time point is assessed: nothing is drawn or said beyond it.</summary>
internal static class LongestDelay
{
    /// <summary>In hours since collection; 0 without a compared pair.</summary>
    public static double Of(Sequence sequence) =>
        sequence
            .Cells.Where(cell => cell.Conclusion != Conclusion.NotAssessed)
            .SelectMany(cell => cell.Pairs)
            .Where(pair => pair.ChangePercent is not null)
            .Select(pair => pair.Delayed?.Delay?.TotalHours ?? 0)
            .DefaultIfEmpty(0)
            .Max();
}

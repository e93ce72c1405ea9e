namespace StabilityStudy.Core.Criteria;

/// <summary>
/// Results of few collection days do not carry a criterion: what a run adds to all its results does not average out
/// over specimens. Both results of each pair in one run share it, and then a day can stand for others.
/// </summary>
internal static class FewDays
{
    /// <summary>With one day nothing tells a run's error from the change, whatever a protocol asks.</summary>
    private const int FewestDays = 2;

    /// <summary>The doubt; null when there is none.</summary>
    public static VerdictReason? Of(int days, bool sameRun, int minimumDays)
    {
        var required = Math.Max(minimumDays, FewestDays);
        return days >= required || sameRun ? null : new TooFewDaysReason(days, required);
    }
}

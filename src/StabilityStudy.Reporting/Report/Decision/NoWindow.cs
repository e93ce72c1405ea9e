namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What to call it where no time point is supported: what was asked beyond today's window says nothing against today's.</summary>
internal static class NoWindow
{
    /// <summary>"none beyond today's 2 h"; "none" where today's window or a shorter one was tested first.</summary>
    public static string InBrief(Sequence sequence, SequenceNames names) =>
        IsBeyondToday(sequence, names) ? $"none beyond today's {Today(names)}" : "none";

    /// <summary>"no window beyond today's 2 h is supported".</summary>
    public static string InWords(Sequence sequence, SequenceNames names) =>
        IsBeyondToday(sequence, names)
            ? $"no window beyond today's {Today(names)} is supported"
            : "no window is supported";

    private static bool IsBeyondToday(Sequence sequence, SequenceNames names) =>
        sequence.Cells[0].Key.TimePoint.Delay > Standard(names);

    private static string Today(SequenceNames names) => DurationText.Format(Standard(names));

    private static TimeSpan Standard(SequenceNames names) =>
        names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time;
}

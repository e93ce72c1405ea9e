namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>How long frozen portions stood before freezing and after thawing: a window holds for such portions only.</summary>
internal static class PortionTimes
{
    /// <summary>The times when they are the same for every row; null where rows differ or nothing was frozen.</summary>
    public static string? Shared(StudyAnalysis analysis) =>
        analysis.Sequences.Select(Of).Distinct().ToImmutableArray() is [{ } shared] ? shared : null;

    /// <summary>"frozen 53 min to 1 h 4 min after collection, tested 5 min to 12 min after thawing"; null where nothing was frozen.</summary>
    public static string? Of(Sequence sequence)
    {
        var times = StudiedRange
            .Shown(sequence)
            .SelectMany(cell => cell.Pairs)
            .Where(pair => pair.CountsForAgreement)
            .Select(pair => pair.Frozen)
            .OfType<FrozenTimes>()
            .ToImmutableArray();
        return times.IsEmpty
            ? null
            : $"frozen {Range(times.Select(time => time.BeforeFreezing))} after collection, tested {Range(times.Select(time => time.AfterThawing))} after thawing";
    }

    private static string Range(IEnumerable<TimeSpan> times)
    {
        var shortest = DurationText.FormatToMinute(times.Min());
        var longest = DurationText.FormatToMinute(times.Max());
        return shortest == longest ? shortest : $"{shortest} to {longest}";
    }
}

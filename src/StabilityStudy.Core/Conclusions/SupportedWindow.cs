namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// The window that the evidence of a sequence supports: the smaller of the planned time and the shortest actual delay
/// among the pairs that counted, rounded down to the protocol's step.
/// </summary>
/// <param name="Time">Longest time from collection to test that is supported.</param>
/// <param name="Planned">The supported time point that gives the longest window.</param>
/// <param name="ShortestActualDelay">Shortest actual delay among the pairs of that time point.</param>
/// <param name="ManufacturerLimit">How the window stands to the manufacturer's limit.</param>
public sealed record SupportedWindow(
    TimeSpan Time,
    TimePoint Planned,
    TimeSpan ShortestActualDelay,
    ManufacturerStanding ManufacturerLimit
)
{
    /// <summary>Whether it is no longer than what today's rule allows the patient group, so that nothing is gained.</summary>
    public bool WithinStandard { get; init; }

    /// <summary>The window of a supported time point; null when the pairs give no actual delay or the step, longer than they are, leaves nothing.</summary>
    public static SupportedWindow? Of(
        TimePoint planned,
        ImmutableArray<PairRecord> pairs,
        Analyte analyte,
        string group,
        string storage,
        TimeSpan step
    )
    {
        var delays = pairs
            .Where(pair => pair.Status is PairStatus.Compared or PairStatus.BeyondInterval)
            .Select(pair => pair.Delayed?.Delay)
            .OfType<TimeSpan>()
            .ToImmutableArray();
        if (delays.IsEmpty)
        {
            return null;
        }

        var shortest = delays.Min();
        var limiting = shortest < planned.Delay ? shortest : planned.Delay;
        var time = TimeSpan.FromTicks(limiting.Ticks / step.Ticks * step.Ticks);
        return time == TimeSpan.Zero
            ? null
            : new SupportedWindow(
                time,
                planned,
                shortest,
                StandingOf(time, analyte.ManufacturerLimit)
            )
            {
                WithinStandard = time <= analyte.StandardWindowOf(group, storage).Time,
            };
    }

    /// <summary>Each supported time point supports a window; pairs tested early can make that of a later one the shorter.</summary>
    internal static SupportedWindow? Longest(
        IEnumerable<(
            Conclusion Conclusion,
            TimePoint TimePoint,
            ImmutableArray<PairRecord> Pairs
        )> cells,
        PairContext context
    ) =>
        cells
            .Where(cell => cell.Conclusion == Conclusion.Supported)
            .Select(cell =>
                Of(
                    cell.TimePoint,
                    cell.Pairs,
                    context.Analyte,
                    context.Group.Id,
                    context.Storage.Id,
                    context.Protocol.WindowStep
                )
            )
            .OfType<SupportedWindow>()
            .MaxBy(window => window.Time);

    private static ManufacturerStanding StandingOf(TimeSpan time, WindowRule? limit) =>
        limit is null ? ManufacturerStanding.Silent
        : time <= limit.Time ? ManufacturerStanding.Inside
        : ManufacturerStanding.Beyond;
}

/// <summary>How a window stands to the manufacturer's limit. The zero member is the cautious answer.</summary>
public enum ManufacturerStanding
{
    /// <summary>Beyond it: a modified test.</summary>
    Beyond,

    /// <summary>The protocol states no manufacturer's limit.</summary>
    Silent,

    /// <summary>Inside it.</summary>
    Inside,
}

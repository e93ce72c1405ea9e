namespace StabilityStudy.Core.Protocol;

/// <summary>A planned delay since collection.</summary>
/// <param name="Delay">The delay; above zero.</param>
public readonly record struct TimePoint(TimeSpan Delay)
{
    /// <summary>The name as written in the files: "6 h".</summary>
    public override string ToString() => DurationText.Format(Delay);
}

/// <summary>How far the actual delay may lie from the planned one.</summary>
/// <param name="Early">Before the planned delay.</param>
/// <param name="Late">After the planned delay.</param>
public sealed record Tolerance(TimeSpan Early, TimeSpan Late)
{
    /// <summary>What holds instead of <see cref="Late"/> from some planned delay on, ascending.</summary>
    public ImmutableArray<LaterTolerance> Later { get; init; } = [];

    /// <summary>How late a test may be at a time point.</summary>
    public TimeSpan LateAt(TimePoint timePoint) => Later.IsEmpty ? Late : LateFrom(timePoint.Delay);

    private TimeSpan LateFrom(TimeSpan delay) =>
        Later.LastOrDefault(step => step.From <= delay)?.Late ?? Late;
}

/// <summary>How late a test may be from some planned delay on.</summary>
/// <param name="From">The planned delay.</param>
/// <param name="Late">After it, and after every longer one.</param>
public sealed record LaterTolerance(TimeSpan From, TimeSpan Late);

namespace StabilityStudy.Core.Protocol;

/// <summary>A planned delay since collection.</summary>
/// <param name="Delay">The delay; above zero.</param>
public readonly record struct TimePoint(TimeSpan Delay)
{
    /// <summary>The name as written in the files: "6 h".</summary>
    public override string ToString() => DurationText.Format(Delay);
}

/// <summary>How far the actual delay may lie from the planned one.</summary>
public sealed record Tolerance(TimeSpan Early, TimeSpan Late);

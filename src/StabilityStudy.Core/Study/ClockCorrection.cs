namespace StabilityStudy.Core.Study;

/// <summary>
/// That the clock of an analyzer was wrong in some runs, as study.toml states it. The files and their canonical form keep the times as they were
/// recorded; what is analyzed are the corrected ones.
/// </summary>
/// <param name="Runs">Runs whose times are corrected; empty where days are stated.</param>
/// <param name="Days">Days by that clock whose times are corrected; empty where runs are stated.</param>
/// <param name="Instrument">The instrument; null for every one in these runs or on these days.</param>
/// <param name="Minutes">What is added to each time.</param>
/// <param name="Reason">How it is known that the clock was wrong.</param>
/// <param name="By">Code of the person who decided.</param>
/// <param name="On">Day of the decision.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record ClockCorrection(
    ImmutableArray<string> Runs,
    ImmutableArray<DateOnly> Days,
    string? Instrument,
    int Minutes,
    string Reason,
    string By,
    DateOnly On,
    int Line
)
{
    /// <summary>Whether the time of a result is corrected.</summary>
    public bool Concerns(Specimens.ResultRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.RecordedAt is { } recorded
            && (Instrument is null || Instrument == row.Instrument)
            && (Runs.Contains(row.Run) || Days.Contains(DateOnly.FromDateTime(recorded.DateTime)));
    }

    /// <summary>The runs or days in words: "the runs R1 and R2", "2026-03-29".</summary>
    public string Where =>
        (
            Runs.IsEmpty
                ? string.Join(
                    ", ",
                    Days.Select(day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
                )
                : $"{(Runs.Length == 1 ? "the run" : "the runs")} {string.Join(", ", Runs)}"
        ) + (Instrument is { } instrument ? $" on {instrument}" : "");
}

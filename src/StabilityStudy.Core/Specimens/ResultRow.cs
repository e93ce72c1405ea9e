namespace StabilityStudy.Core.Specimens;

/// <summary>One result: a row of results.csv.</summary>
/// <param name="SourceRow">Line in the facility's file.</param>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Tube">Code of the container.</param>
/// <param name="Analyte">Analyte.</param>
/// <param name="Occasion">Baseline or a planned delay.</param>
/// <param name="Replicate">From 1.</param>
/// <param name="TestedAt">Time of the test; null when it was not tested.</param>
/// <param name="Result">The result as reported.</param>
/// <param name="Unit">Unit as reported.</param>
/// <param name="Run">Code of the run; empty when not recorded.</param>
/// <param name="Instrument">Instrument; empty when not recorded.</param>
/// <param name="Lot">Reagent lot; empty when not recorded.</param>
/// <param name="Calibration">Calibration; empty when not recorded.</param>
/// <param name="Operator">Code of the person; empty when not recorded.</param>
/// <param name="Flag">The instrument's error flag; empty when there was none.</param>
/// <param name="Remark">Remark; empty when there is none.</param>
public sealed record ResultRow(
    int SourceRow,
    string Specimen,
    string Tube,
    string Analyte,
    TestOccasion Occasion,
    int Replicate,
    DateTimeOffset? TestedAt,
    ReportedResult Result,
    string Unit,
    string Run,
    string Instrument,
    string Lot,
    string Calibration,
    string Operator,
    string Flag,
    string Remark
)
{
    /// <summary>What was added to the recorded time, because study.toml says that the clock was wrong.</summary>
    public TimeSpan ClockCorrection { get; init; }

    /// <summary>The time of the test as it was recorded; null when it was not tested.</summary>
    public DateTimeOffset? RecordedAt => TestedAt - ClockCorrection;

    /// <summary>What the flag means for the result, as study.toml declares it.</summary>
    public FlagMeaning FlagMeaning { get; init; }

    /// <summary>Whether the instrument flagged the test as failed.</summary>
    public bool IsFlaggedAsFailed => Flag.Length > 0 && FlagMeaning == FlagMeaning.Failed;
}

/// <summary>When a result belongs: the baseline, or a planned delay.</summary>
/// <param name="TimePoint">The planned delay; null for the baseline.</param>
public readonly record struct TestOccasion(TimePoint? TimePoint)
{
    /// <summary>The word for the baseline in the files.</summary>
    public const string BaselineWord = "baseline";

    /// <summary>Whether this is the baseline.</summary>
    public bool IsBaseline => TimePoint is null;

    /// <summary>"baseline" or the time point as written in the files.</summary>
    public override string ToString() => TimePoint?.ToString() ?? BaselineWord;
}

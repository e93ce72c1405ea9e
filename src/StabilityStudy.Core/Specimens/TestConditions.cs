namespace StabilityStudy.Core.Specimens;

/// <summary>
/// What a row of results.csv says of a test and many rows have in common, above all those of one analyte in one run. It is one object
/// for them, since there may be a million rows.
/// </summary>
/// <param name="Unit">Unit as reported.</param>
/// <param name="Run">Code of the run; empty when not recorded.</param>
/// <param name="Instrument">Instrument; empty when not recorded.</param>
/// <param name="Lot">Reagent lot; empty when not recorded.</param>
/// <param name="Calibration">Calibration; empty when not recorded.</param>
/// <param name="Operator">Code of the person; empty when not recorded.</param>
/// <param name="Flag">The instrument's error flag; empty when there was none.</param>
/// <param name="Remark">Remark; empty when there is none.</param>
public sealed record TestConditions(
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
    /// <summary>What the flag means for the result, as study.toml declares it.</summary>
    public FlagMeaning FlagMeaning { get; init; }

    /// <summary>What was added to the recorded time, because study.toml says that the clock was wrong.</summary>
    public TimeSpan ClockCorrection { get; init; }

    /// <summary>The runs of replicates that differ, which a code with the same words in it cannot imitate; empty when they share one or it was not recorded.</summary>
    internal ImmutableArray<string> ReplicateRuns { get; init; } = [];

    /// <summary>A run of which nothing else was recorded.</summary>
    public static TestConditions OfRun(string run) => new("", run, "", "", "", "", "", "");
}

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
/// <param name="Conditions">What the row says of the test and many rows have in common.</param>
public sealed record ResultRow(
    int SourceRow,
    string Specimen,
    string Tube,
    string Analyte,
    TestOccasion Occasion,
    int Replicate,
    DateTimeOffset? TestedAt,
    ReportedResult Result,
    TestConditions Conditions
)
{
    /// <summary>Unit as reported.</summary>
    public string Unit => Conditions.Unit;

    /// <summary>Code of the run; empty when not recorded.</summary>
    public string Run
    {
        get => Conditions.Run;
        init => Conditions = Conditions with { Run = value };
    }

    /// <summary>Instrument; empty when not recorded.</summary>
    public string Instrument
    {
        get => Conditions.Instrument;
        init => Conditions = Conditions with { Instrument = value };
    }

    /// <summary>Reagent lot; empty when not recorded.</summary>
    public string Lot
    {
        get => Conditions.Lot;
        init => Conditions = Conditions with { Lot = value };
    }

    /// <summary>Calibration; empty when not recorded.</summary>
    public string Calibration
    {
        get => Conditions.Calibration;
        init => Conditions = Conditions with { Calibration = value };
    }

    /// <summary>Code of the person; empty when not recorded.</summary>
    public string Operator
    {
        get => Conditions.Operator;
        init => Conditions = Conditions with { Operator = value };
    }

    /// <summary>The instrument's error flag; empty when there was none.</summary>
    public string Flag
    {
        get => Conditions.Flag;
        init => Conditions = Conditions with { Flag = value };
    }

    /// <summary>Remark; empty when there is none.</summary>
    public string Remark
    {
        get => Conditions.Remark;
        init => Conditions = Conditions with { Remark = value };
    }

    /// <summary>What the flag means for the result, as study.toml declares it.</summary>
    public FlagMeaning FlagMeaning
    {
        get => Conditions.FlagMeaning;
        init => Conditions = Conditions with { FlagMeaning = value };
    }

    /// <summary>What was added to the recorded time, because study.toml says that the clock was wrong.</summary>
    public TimeSpan ClockCorrection
    {
        get => Conditions.ClockCorrection;
        init => Conditions = Conditions with { ClockCorrection = value };
    }

    /// <summary>The time of the test as it was recorded; null when it was not tested.</summary>
    public DateTimeOffset? RecordedAt => TestedAt - ClockCorrection;

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

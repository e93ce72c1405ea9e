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
    // There may be a million rows: what can be absent stands beside a mark of its own, which takes less room than a nullable value.
    private readonly DateTimeOffset _testedAt = TestedAt ?? default;
    private readonly bool _isTested = TestedAt is not null;
    private readonly short _replicate = (short)Replicate;

    /// <summary>Time of the test; null when it was not tested.</summary>
    public DateTimeOffset? TestedAt
    {
        get => _isTested ? _testedAt : null;
        init => (_testedAt, _isTested) = (value ?? default, value is not null);
    }

    /// <summary>From 1.</summary>
    public int Replicate
    {
        get => _replicate;
        init => _replicate = (short)value;
    }

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
public readonly record struct TestOccasion
{
    /// <summary>The word for the baseline in the files.</summary>
    public const string BaselineWord = "baseline";

    // One tick more than the delay, which is a matter of minutes; 0 for the baseline. So it takes half the room of a nullable value.
    private readonly long _oneMore;

    /// <summary>When a result belongs.</summary>
    /// <param name="timePoint">The planned delay; null for the baseline.</param>
    public TestOccasion(TimePoint? timePoint)
    {
        _oneMore = timePoint is { Delay.Ticks: var ticks } ? ticks + 1 : 0;
    }

    /// <summary>The planned delay; null for the baseline.</summary>
    public TimePoint? TimePoint => IsBaseline ? null : new TimePoint(new TimeSpan(_oneMore - 1));

    /// <summary>Whether this is the baseline.</summary>
    public bool IsBaseline => _oneMore == 0;

    /// <summary>"baseline" or the time point as written in the files.</summary>
    public override string ToString() => TimePoint?.ToString() ?? BaselineWord;
}

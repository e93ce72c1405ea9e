namespace StabilityStudy.Core.Specimens;

/// <summary>One control result: a row of controls.csv.</summary>
/// <param name="SourceRow">Line in the facility's file.</param>
/// <param name="Control">Code of the control material.</param>
/// <param name="Analyte">Analyte.</param>
/// <param name="Run">Code of the run.</param>
/// <param name="TestedAt">Time of the test.</param>
/// <param name="Result">The result as reported.</param>
/// <param name="Unit">Unit as reported.</param>
/// <param name="Target">Expected value, in the unit; null when not stated.</param>
/// <param name="AllowedLow">Lowest acceptable result; null when not stated.</param>
/// <param name="AllowedHigh">Highest acceptable result; null when not stated.</param>
/// <param name="Kind">What the material is for.</param>
public sealed record ControlRow(
    int SourceRow,
    string Control,
    string Analyte,
    string Run,
    DateTimeOffset TestedAt,
    ReportedResult Result,
    string Unit,
    decimal? Target,
    decimal? AllowedLow,
    decimal? AllowedHigh,
    ControlKind Kind
)
{
    /// <summary>What was added to the recorded time, as for the results of the run.</summary>
    public TimeSpan ClockCorrection { get; init; }

    /// <summary>The time of the test as it was recorded.</summary>
    public DateTimeOffset RecordedAt => TestedAt - ClockCorrection;

    /// <summary>Expected class of a qualitative test, which has neither target nor range; null when not stated.</summary>
    public CategoryResult? Expected { get; init; }
}

/// <summary>What a control material is for.</summary>
public enum ControlKind
{
    /// <summary>Decides whether a run is in control.</summary>
    Control,

    /// <summary>Stable plasma tested in the runs of baseline and delayed tubes; its shift shows what the runs add to the change.</summary>
    BridgingPlasma,
}

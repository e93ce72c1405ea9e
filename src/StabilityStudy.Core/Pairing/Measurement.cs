namespace StabilityStudy.Core.Pairing;

/// <summary>What one tube gave at one time.</summary>
/// <param name="Tube">Code of the container.</param>
/// <param name="Result">The result that counts; the mean when the protocol plans two replicates.</param>
/// <param name="TestedAt">Time of the test; null when it was not tested.</param>
/// <param name="Delay">Actual delay since collection, or since thawing where time counts from there; null when it was not tested.</param>
/// <param name="Conditions">How it was tested, which many results have in common; of replicates that differ, what each recorded.</param>
/// <param name="SourceRow">Line of results.csv; null when there is no row.</param>
public sealed record Measurement(
    string Tube,
    ReportedResult Result,
    DateTimeOffset? TestedAt,
    TimeSpan? Delay,
    TestConditions Conditions,
    int? SourceRow
)
{
    /// <summary>Run; empty when not recorded.</summary>
    public string Run => Conditions.Run;

    /// <summary>Instrument; empty when not recorded.</summary>
    public string Instrument => Conditions.Instrument;

    /// <summary>Reagent lot; empty when not recorded.</summary>
    public string Lot => Conditions.Lot;

    /// <summary>Calibration; empty when not recorded.</summary>
    public string Calibration => Conditions.Calibration;

    /// <summary>Code of the person who tested; empty when not recorded.</summary>
    public string Operator => Conditions.Operator;

    /// <summary>The tube with the times of its handling; null for simulated results.</summary>
    public TubeRow? Container { get; init; }

    /// <summary>Between the codes of two replicates that differ.</summary>
    internal const string And = " and ";

    /// <summary>The runs of replicates that differ, which a code with the same words in it cannot imitate; empty when they share one or it was not recorded.</summary>
    internal ImmutableArray<string> ReplicateRuns { get; init; } = [];

    /// <summary>The run of the first replicate; null when not recorded.</summary>
    internal string? FirstRun =>
        !ReplicateRuns.IsEmpty ? ReplicateRuns[0]
        : Run.Length > 0 ? Run
        : null;

    /// <summary>The run of each replicate; empty when not recorded.</summary>
    internal IEnumerable<string> Runs() =>
        ReplicateRuns is { IsEmpty: false } ? ReplicateRuns
        : Run.Length > 0 ? [Run]
        : [];
}

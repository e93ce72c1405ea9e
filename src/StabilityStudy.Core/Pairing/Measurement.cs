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
    // There may be a million: what can be absent stands beside a mark of its own, which takes less room than a nullable value.
    private readonly DateTimeOffset _testedAt = TestedAt ?? default;
    private readonly TimeSpan _delay = Delay ?? default;
    private readonly int _sourceRow = SourceRow ?? default;
    private readonly bool _isTested = TestedAt is not null;
    private readonly bool _hasDelay = Delay is not null;
    private readonly bool _hasRow = SourceRow is not null;

    /// <summary>Time of the test; null when it was not tested.</summary>
    public DateTimeOffset? TestedAt
    {
        get => _isTested ? _testedAt : null;
        init => (_testedAt, _isTested) = (value ?? default, value is not null);
    }

    /// <summary>Actual delay since collection, or since thawing where time counts from there; null when it was not tested.</summary>
    public TimeSpan? Delay
    {
        get => _hasDelay ? _delay : null;
        init => (_delay, _hasDelay) = (value ?? default, value is not null);
    }

    /// <summary>Line of results.csv; null when there is no row.</summary>
    public int? SourceRow
    {
        get => _hasRow ? _sourceRow : null;
        init => (_sourceRow, _hasRow) = (value ?? default, value is not null);
    }

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

    /// <summary>The runs of replicates that differ; empty when they share one or it was not recorded.</summary>
    internal ImmutableArray<string> ReplicateRuns => Conditions.ReplicateRuns;

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

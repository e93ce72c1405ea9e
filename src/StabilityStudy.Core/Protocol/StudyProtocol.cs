namespace StabilityStudy.Core.Protocol;

/// <summary>What is fixed before data are collected.</summary>
/// <param name="Code">Study code, printed on every page.</param>
/// <param name="Version">Version of the protocol.</param>
/// <param name="TimePoints">Planned delays since collection, ascending.</param>
/// <param name="Tolerance">How far an actual delay may lie from the planned one.</param>
/// <param name="BaselineWithin">Longest time from collection to the baseline test.</param>
/// <param name="TubePlan">Which tube is tested at which time.</param>
/// <param name="Replicates">Results per tube and time that are averaged: 1 or 2.</param>
/// <param name="MinimumDays">Fewest collection days on which a bias criterion can be met.</param>
/// <param name="WindowStep">A supported window is rounded down to this step.</param>
/// <param name="Signatories">Who signs, in order.</param>
/// <param name="Storages">States in which tubes wait.</param>
/// <param name="Groups">Patient groups to which conclusions apply.</param>
/// <param name="Eligibility">Which specimens may be used.</param>
/// <param name="Analytes">Measured quantities.</param>
/// <param name="Limits">Allowable bias and allowable differences, each with a source.</param>
/// <param name="Criteria">Prespecified tests on the data.</param>
public sealed record StudyProtocol(
    string Code,
    string Version,
    ImmutableArray<TimePoint> TimePoints,
    Tolerance Tolerance,
    TimeSpan BaselineWithin,
    TubePlan TubePlan,
    int Replicates,
    int MinimumDays,
    TimeSpan WindowStep,
    ImmutableArray<Signatory> Signatories,
    ImmutableArray<Storage> Storages,
    ImmutableArray<PatientGroup> Groups,
    Eligibility Eligibility,
    ImmutableArray<Analyte> Analytes,
    ImmutableArray<Limit> Limits,
    ImmutableArray<Criterion> Criteria
)
{
    /// <summary>The first delayed test comes within so many standard windows.</summary>
    public const int FirstTestWithinWindows = 2;

    /// <summary>
    /// Largest share of the received specimens that may be left out of a time point, percent of those received; beyond it
    /// the time point is at best inconclusive, because what is left out may be what speaks against the window.
    /// </summary>
    public decimal LeftOutPercentMaximum { get; init; } = 20;

    /// <summary>Longest time between baseline and delayed test for which one recorded run counts as one run.</summary>
    public TimeSpan OneRunWithin { get; init; } = TimeSpan.FromHours(1);

    /// <summary>Reasons, fixed before data, for which a valid or failed result may be tested again; empty means none.</summary>
    public ImmutableArray<string> RerunReasons { get; init; } = [];

    /// <summary>Whether control results belong to the study.</summary>
    public ControlRule Controls { get; init; } = ControlRule.EveryRun;

    /// <summary>What becomes of a second specimen of a person in one group.</summary>
    public RepeatDraws RepeatDraws { get; init; } = RepeatDraws.LeftOut;

    /// <summary>How many of an analyte's time points each specimen is tested at; null means all of them.</summary>
    public int? DelaysPerSpecimen { get; init; }

    /// <summary>The instruments of a study over several, each with the planned number of specimens of every group; empty where the number holds for the group, whatever it is tested with.</summary>
    public ImmutableArray<string> Instruments { get; init; } = [];

    /// <summary>How often the data may be looked at: 1, or 2 where an extension is planned before data; each look then has a wider interval.</summary>
    public int PlannedLooks { get; init; } = 1;

    /// <summary>From when a change is counted.</summary>
    public ChangeOrigin ChangeSince { get; init; } = ChangeOrigin.Collection;

    /// <summary>What times count from: planned delays, the time to the baseline test, and the windows.</summary>
    public TimeOrigin TimeOrigin { get; init; }

    /// <summary>On how many days specimens are to be collected, each day with runs of its own; null when the protocol does not say. It plans, and nothing is concluded from it.</summary>
    public int? PlannedDays { get; init; }

    /// <summary>
    /// How long after it came into force a window is to be reviewed; null when the protocol does not say. ISO Guide 35:2017, 8.10.2.3.3, sets the first monitoring of a reference
    /// material after the length of its stability study, and later ones after twice that. What changes a processing window is not the specimen but instrument, reagent and work, so
    /// the length is for the laboratory to state.
    /// </summary>
    public TimeSpan? ReviewAfter { get; init; }

    /// <summary>How specimens are to be drawn; null when the protocol does not say.</summary>
    public DrawRules? Draw { get; init; }

    /// <summary>How tubes are to be spun; null when the protocol does not say.</summary>
    public SpinRules? Spin { get; init; }

    /// <summary>How plasma is to be frozen and thawed; null when the protocol does not say.</summary>
    public FreezingRules? Freezing { get; init; }

    /// <summary>Whether tubes are drawn one after the other, so that each has a place in the draw: not so for portions of one plasma, and for one tube.</summary>
    public bool DrawsATubeForEachTest =>
        TubePlan == TubePlan.TubePerTimePoint && TimeOrigin == TimeOrigin.Collection;

    /// <summary>Which study this one repeats; null for none.</summary>
    public RepeatOf? Repeat { get; init; }

    /// <summary>From when the time of a tube counts; null where that was not recorded.</summary>
    public DateTimeOffset? StartOf(Specimens.TubeRow tube)
    {
        ArgumentNullException.ThrowIfNull(tube);
        return TimeOrigin == TimeOrigin.Thawing ? tube.ThawedAt : tube.CollectedAt;
    }

    /// <summary>Whether changes in a storage are counted from collection; one that begins later, frozen or in portions, starts from the baseline.</summary>
    public bool IsSinceCollection(Storage storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        return ChangeSince == ChangeOrigin.Collection
            && TimeOrigin == TimeOrigin.Collection
            && !BeginsAfterBaseline(storage);
    }

    /// <summary>Whether a storage begins later than collection: frozen, or in portions of separated plasma.</summary>
    public bool BeginsAfterBaseline(Storage storage)
    {
        ArgumentNullException.ThrowIfNull(storage);
        return TimeOrigin == TimeOrigin.Collection
            && (TubePlan == TubePlan.Aliquots || storage.HighestCelsius < 0);
    }

    /// <summary>The time points at which an analyte is tested in a patient group, ascending.</summary>
    public ImmutableArray<TimePoint> TimePointsOf(Analyte analyte, string group)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        var ofGroup =
            analyte
                .GroupWindows.FirstOrDefault(item => item.Group == group && item.Storage is null)
                ?.TimePoints
            ?? [];
        return
        [
            .. (
                !ofGroup.IsEmpty ? ofGroup
                : !analyte.TimePoints.IsEmpty ? analyte.TimePoints
                : TimePoints
            ).OrderBy(timePoint => timePoint.Delay),
        ];
    }

    /// <summary>
    /// Whether an analyte is tested for the first time so late in a group, beyond twice its own standard window, that
    /// nobody looks at the stretch between. A standard window of zero allows no waiting and gives no measure.
    /// </summary>
    public bool FirstTestIsTooLate(Analyte analyte, string group, string storage)
    {
        ArgumentNullException.ThrowIfNull(analyte);
        var standard = analyte.StandardWindowOf(group, storage).Time;
        return standard > TimeSpan.Zero
            && TimePointsOf(analyte, group) is [var first, ..]
            && first.Delay > FirstTestWithinWindows * standard;
    }

    /// <summary>Whether a signatory decides on the window: the approver, and where no role is called so, the last to sign.</summary>
    public bool Decides(Signatory signatory) =>
        Signatories.Any(IsApprover) ? IsApprover(signatory) : signatory == Signatories[^1];

    private static bool IsApprover(Signatory signatory)
    {
        ArgumentNullException.ThrowIfNull(signatory);
        return signatory.Role.Contains("approver", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The criteria that apply to an analyte in a patient group, in order, with the limit it is held to; a criterion that counts changes has none.</summary>
    public ImmutableArray<(Criterion Criterion, Limit? Limit)> Applying(
        string analyte,
        string group
    ) =>
        [
            .. Criteria
                .Where(criterion => criterion.AppliesTo(group))
                .SelectMany(criterion =>
                    criterion
                        .Limits.Where(choice => choice.Analyte == analyte)
                        .Select(choice =>
                            (criterion, Limits.SingleOrDefault(limit => limit.Id == choice.Limit))
                        )
                ),
        ];
}

/// <summary>Whether control results belong to the study. The zero member is the cautious one.</summary>
public enum ControlRule
{
    /// <summary>Every run has a control result within its range, else what was tested in it is not assessed.</summary>
    EveryRun,

    /// <summary>Control results are kept elsewhere and were not checked here; the report says so.</summary>
    KeptElsewhere,
}

/// <summary>What times count from. The zero member counts longest.</summary>
public enum TimeOrigin
{
    /// <summary>From the draw.</summary>
    Collection,

    /// <summary>From the thawing of a frozen portion, which is then kept as a storage of its own.</summary>
    Thawing,
}

/// <summary>From when a change is counted. The zero member asks for more.</summary>
public enum ChangeOrigin
{
    /// <summary>From collection: each specimen's value then is computed from its own baseline delay.</summary>
    Collection,

    /// <summary>From the baseline, and the claim says so.</summary>
    Baseline,
}

/// <summary>What becomes of a second specimen of a person in one group.</summary>
public enum RepeatDraws
{
    /// <summary>Only the first specimen counts.</summary>
    LeftOut,

    /// <summary>All count; those of one person share a cluster, and for single specimens the person counts once.</summary>
    OneCluster,
}

/// <summary>Which tube is tested at which time.</summary>
public enum TubePlan
{
    /// <summary>Each time point has a tube of its own, unopened until then.</summary>
    TubePerTimePoint,

    /// <summary>Portions of separated plasma, one a time point.</summary>
    Aliquots,

    /// <summary>One tube is tested again at each time point; only for tubes already spun.</summary>
    OneTubeRetested,
}

/// <summary>A person's part in signing the report.</summary>
/// <param name="Role">Author, reviewer, approver …</param>
/// <param name="Meaning">What the signature says.</param>
public sealed record Signatory(string Role, string Meaning);

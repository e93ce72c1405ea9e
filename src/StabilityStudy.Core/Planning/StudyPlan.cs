using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Planning;

/// <summary>What a protocol needs and what its study can show, before there are data.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="Request">What was asked for.</param>
/// <param name="Days">Collection days.</param>
/// <param name="DaysFrom">Where that number comes from.</param>
/// <param name="Material">Specimens, tubes and blood, a patient group each.</param>
/// <param name="Rows">Every analyte, group and storage that was asked for, in the order of the protocol.</param>
/// <param name="Detail">What costs a chance and what would raise it, for the first time point that is open or worse; null where none is, or where it was not asked for.</param>
public sealed record StudyPlan(
    StudyProtocol Protocol,
    PlanRequest Request,
    int Days,
    DaysOrigin DaysFrom,
    ImmutableArray<GroupMaterial> Material,
    ImmutableArray<PlannedRow> Rows,
    PlanDetail? Detail
);

/// <summary>What is asked of a plan.</summary>
/// <param name="Studies">Most simulated studies for each supposed change.</param>
/// <param name="Seed">Any number; the same gives the same figures.</param>
public sealed record PlanRequest(int Studies, ulong Seed)
{
    /// <summary>Studies for each supposed change where nobody says how many.</summary>
    public const int UsualStudies = 600;

    /// <summary>Most studies that can be asked for.</summary>
    public const int MostStudies = 100_000;

    /// <summary>Seed where nobody chooses one.</summary>
    public const ulong UsualSeed = 1;

    /// <summary>Blood of a tube where nobody says how much, mL.</summary>
    public const decimal UsualMilliliters = 2.7m;

    /// <summary>Half the width of its 95 % interval at which a chance is certain enough, with the usual number of studies.</summary>
    private const double UsualTolerance = 0.04;

    /// <summary>What is asked where nobody asks for something else, as for the protocol document and the lock.</summary>
    public static PlanRequest Usual { get; } = new(UsualStudies, UsualSeed);

    /// <summary>Blood that one tube takes, mL.</summary>
    public decimal MillilitersOfTube { get; init; } = UsualMilliliters;

    /// <summary>Collection days in place of those of the protocol; null for these.</summary>
    public int? Days { get; init; }

    /// <summary>The only analyte that is asked about; null for all.</summary>
    public string? Analyte { get; init; }

    /// <summary>The only group that is asked about; null for all.</summary>
    public string? Group { get; init; }

    /// <summary>Pairs that the facility has, for the spread; empty without.</summary>
    public ImmutableArray<PilotPair> Pilot { get; init; } = [];

    /// <summary>Whether the chances of whole sequences are asked for.</summary>
    public bool Joint { get; init; }

    /// <summary>Whether what costs a chance and what would raise it is asked for.</summary>
    public bool Detail { get; init; }

    /// <summary>Whether the chance of each criterion, and what keeps it from being met, is asked for every time point.</summary>
    public bool ByCriterion { get; init; }

    /// <summary>Half the width of the interval of a chance that is certain enough: that of the most studies at a chance of 50 %.</summary>
    public double Tolerance => UsualTolerance * Math.Sqrt((double)UsualStudies / Studies);

    internal StudyNumber Number => new(Studies, Tolerance);
}

/// <summary>Where the number of collection days comes from.</summary>
public enum DaysOrigin
{
    /// <summary>From nobody: the usual number.</summary>
    Supposed,

    /// <summary>From the protocol.</summary>
    Protocol,

    /// <summary>From whoever asks.</summary>
    Asked,
}

/// <summary>An analyte in a patient group and storage.</summary>
/// <param name="Analyte">The analyte.</param>
/// <param name="Group">The group.</param>
/// <param name="Storage">The storage.</param>
/// <param name="Specimens">Specimens at each time point.</param>
/// <param name="Shares">How many specimens each criterion that holds a share allows to fail.</param>
/// <param name="Levels">The range of baselines that is wanted at each decision level.</param>
/// <param name="TimePoints">Its time points, ascending.</param>
/// <param name="Joint">Chance of each time point with every earlier one; empty where it was not asked for.</param>
public sealed record PlannedRow(
    Analyte Analyte,
    PatientGroup Group,
    Storage Storage,
    int Specimens,
    ImmutableArray<AllowedFailures> Shares,
    ImmutableArray<LevelRange> Levels,
    ImmutableArray<PlannedTimePoint> TimePoints,
    ImmutableArray<JointChance> Joint
);

/// <summary>A time point with its chances.</summary>
/// <param name="TimePoint">The time point.</param>
/// <param name="Expected">The expected change.</param>
/// <param name="Gap">Why it is not simulated; null where it is.</param>
/// <param name="RangeIsSupposed">Whether the range of baselines had to be supposed.</param>
/// <param name="Chances">With none of the expected change, half of it and all of it; with none alone where no change was published.</param>
public sealed record PlannedTimePoint(
    TimePoint TimePoint,
    PlannedChange Expected,
    PlanGap? Gap,
    bool RangeIsSupposed,
    ImmutableArray<ChanceAtChange> Chances
)
{
    /// <summary>The chance without any change; null where it is not simulated.</summary>
    public ChanceAtChange? WithoutChange => Chances.IsEmpty ? null : Chances[0];

    /// <summary>The chance with all of the expected change; null where none was published.</summary>
    public ChanceAtChange? WithAll => Chances.Length > 1 ? Chances[^1] : null;
}

/// <summary>The chance that a time point and every earlier one of its row are supported.</summary>
/// <param name="TimePoint">The time point.</param>
/// <param name="ShareOfExpected">Every time point has changed by this share of its expected change.</param>
/// <param name="Chance">The chance.</param>
public sealed record JointChance(
    TimePoint TimePoint,
    double ShareOfExpected,
    CharacteristicPoint Chance
);

/// <summary>How many specimens may fail a criterion that holds a share.</summary>
/// <param name="Criterion">Its key.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="SharePercent">The share that must be shown, percent.</param>
/// <param name="Specimens">Specimens that count.</param>
/// <param name="Allowed">How many of them may fail; null where even none failing does not show the share.</param>
/// <param name="NextSpecimens">The smallest number of specimens that allows one more.</param>
public sealed record AllowedFailures(
    string Criterion,
    CriterionKind Kind,
    decimal SharePercent,
    int Specimens,
    int? Allowed,
    int NextSpecimens
);

/// <summary>The baselines that are wanted beside a decision level.</summary>
/// <param name="Level">The level, in the unit of the analyte.</param>
/// <param name="EachSide">Fewest baselines on either side; fewer leave the level open.</param>
/// <param name="PlannedBelow">Specimens that the protocol plans below it; null where it does not say.</param>
/// <param name="PlannedAbove">Specimens that it plans at it or above; null where it does not say.</param>
/// <param name="IsInRange">Whether the planned range reaches beyond it on both sides; null where no range is stated.</param>
public sealed record LevelRange(
    decimal Level,
    int EachSide,
    int? PlannedBelow,
    int? PlannedAbove,
    bool? IsInRange
);

/// <summary>What costs the chance of a time point with all of its expected change, and what would raise it.</summary>
/// <param name="Key">Which time point.</param>
/// <param name="Chance">Its chance as planned.</param>
/// <param name="Alternatives">Its chance if something were otherwise.</param>
/// <param name="For80">The smallest number of specimens with a chance of at least 80 %, as many a day as planned; null where none up to <see cref="PlanAlternatives.MostSpecimens"/> has it.</param>
/// <param name="For90">The same for 90 %.</param>
public sealed record PlanDetail(
    CellKey Key,
    ChanceAtChange Chance,
    ImmutableArray<PlanAlternative> Alternatives,
    int? For80,
    int? For90
);

/// <summary>The chance if something were otherwise.</summary>
/// <param name="What">What.</param>
/// <param name="Specimens">Number of specimens.</param>
/// <param name="Days">Number of days.</param>
/// <param name="Chance">The chance.</param>
public sealed record PlanAlternative(
    AlternativeKind What,
    int Specimens,
    int Days,
    CharacteristicPoint Chance
);

/// <summary>What is otherwise.</summary>
public enum AlternativeKind
{
    /// <summary>Numbers of specimens and days only.</summary>
    Numbers,

    /// <summary>Each result is the mean of two.</summary>
    Duplicates,

    /// <summary>Results are reported with one decimal more.</summary>
    OneMoreDecimal,
}

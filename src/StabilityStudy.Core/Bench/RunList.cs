using StabilityStudy.Core.Collecting;

namespace StabilityStudy.Core.Bench;

/// <summary>The delayed tubes of a day by the clock, in the order in which they fall due.</summary>
/// <param name="Day">Day on which the time of these specimens began to count.</param>
/// <param name="Runs">The runs.</param>
/// <param name="WithoutTime">Tubes whose collection time is in question; their times are offsets.</param>
public sealed record RunList(
    DateOnly Day,
    ImmutableArray<Run> Runs,
    ImmutableArray<WaitingTube> WithoutTime
);

/// <summary>Tubes of one planned time that fall due one after the other.</summary>
/// <param name="Storage">Storage.</param>
/// <param name="TimePoint">Planned delay.</param>
/// <param name="IsFirst">Whether no earlier tube of the list belongs to the same planned time.</param>
/// <param name="Tubes">The tubes.</param>
/// <param name="Loads">What can be tested together; places count within the run.</param>
public sealed record Run(
    Storage Storage,
    TimePoint TimePoint,
    bool IsFirst,
    ImmutableArray<DueTube> Tubes,
    ImmutableArray<Load> Loads
);

/// <summary>A tube with its times.</summary>
/// <param name="Waiting">The tube.</param>
/// <param name="StartedAt">Time of collection, or of thawing.</param>
/// <param name="SpinFrom">From when on it may be spun; null where it is not spun shortly before its test.</param>
/// <param name="From">From when on it may be tested.</param>
/// <param name="Until">Until when.</param>
/// <param name="RunOrder">Its place among all tubes of the same planned time, from 1.</param>
public sealed record DueTube(
    WaitingTube Waiting,
    DateTimeOffset StartedAt,
    DateTimeOffset? SpinFrom,
    DateTimeOffset From,
    DateTimeOffset Until,
    int RunOrder
);

/// <summary>A tube that waits for its test.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Tube">Code of the container; null where the files do not tell which one it is.</param>
/// <param name="InPlaceOf">The planned tube in whose place it is tested; null for the planned one.</param>
/// <param name="Group">Patient group.</param>
/// <param name="Storage">Storage.</param>
/// <param name="TimePoint">Planned delay.</param>
public sealed record WaitingTube(
    string Specimen,
    string? Tube,
    string? InPlaceOf,
    PatientGroup Group,
    Storage Storage,
    TimePoint TimePoint
);

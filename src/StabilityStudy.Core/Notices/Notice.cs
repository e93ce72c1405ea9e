namespace StabilityStudy.Core.Notices;

/// <summary>What a notice does to what was decided before. The zero member takes windows away.</summary>
public enum NoticeKind
{
    /// <summary>Approved windows are withdrawn.</summary>
    Withdrawn,

    /// <summary>A new director does not take windows over that another one approved.</summary>
    EndedByNewDirector,

    /// <summary>A study is ended without a conclusion.</summary>
    StudyEnded,

    /// <summary>Windows were reviewed and stay as they are until the next review.</summary>
    Reviewed,

    /// <summary>A new director takes over windows that another one approved.</summary>
    Adopted,
}

/// <summary>A notice about what signed reports put into force, or about a study that will have no report; it counts once the person it names has signed it.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="By">Printed name of the person who decides and signs.</param>
/// <param name="Role">The role in which that person signs.</param>
/// <param name="Reason">Why, or after which review.</param>
public sealed record Notice(NoticeKind Kind, string By, string Role, string Reason)
{
    /// <summary>First day on which the windows are no longer in force; null where none is taken away.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Day by which the windows are to be reviewed next; null where it stays as it is.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>Whether results that were reported under the windows are to be looked at again.</summary>
    public bool LooksBack { get; init; }

    /// <summary>The reports it is about; empty for a study that is ended.</summary>
    public ImmutableArray<NoticedReport> Reports { get; init; } = [];

    /// <summary>The study that is ended; null for a notice about reports.</summary>
    public EndedStudy? Study { get; init; }

    /// <summary>Whether windows are not in force afterwards.</summary>
    public bool TakesAway => TakesAwayWindows(Kind);

    /// <summary>Whether a kind takes windows out of force.</summary>
    public static bool TakesAwayWindows(NoticeKind kind) =>
        kind is NoticeKind.Withdrawn or NoticeKind.EndedByNewDirector;
}

/// <summary>A report that a notice is about.</summary>
/// <param name="Code">Code of the study.</param>
/// <param name="InputDigest">Digest of the study's inputs.</param>
/// <param name="FileSha256">SHA-256 of the signed file as it was then, lower-case hexadecimal.</param>
/// <param name="DecidedBy">Who decided on it.</param>
/// <param name="Windows">The windows that the notice is about.</param>
public sealed record NoticedReport(
    string Code,
    string InputDigest,
    string FileSha256,
    string DecidedBy,
    ImmutableArray<NoticedWindow> Windows
)
{
    private const int DigestShown = 8;

    /// <summary>Its name for people: code of the study and beginning of the digest.</summary>
    public string Name => $"{Code}-{InputDigest[..Math.Min(DigestShown, InputDigest.Length)]}";
}

/// <summary>A window that a notice is about, as the report's decision states it.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="GroupName">Name of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="StorageWords">The storage in words.</param>
/// <param name="Today">What today's rule allows.</param>
/// <param name="InForceFrom">First day on which the window was in force.</param>
public sealed record NoticedWindow(
    string Analyte,
    string Group,
    string GroupName,
    string Storage,
    string StorageWords,
    TimeSpan Today,
    DateOnly InForceFrom
)
{
    /// <summary>The window; null for a decision that is a text.</summary>
    public TimeSpan? Window { get; init; }

    /// <summary>The shorter window that stays when the longer one is taken away; null where today's rule is left.</summary>
    public TimeSpan? Remaining { get; init; }

    /// <summary>Time points of the study between what stays and the window.</summary>
    public ImmutableArray<TimeSpan> TimePoints { get; init; } = [];

    /// <summary>Instruments for which it held, as far as recorded.</summary>
    public ImmutableArray<string> Instruments { get; init; } = [];

    /// <summary>Reagent lots for which it held, as far as recorded.</summary>
    public ImmutableArray<string> Lots { get; init; } = [];

    /// <summary>The longest age that may be tested when the window is taken away.</summary>
    public TimeSpan Kept => Remaining ?? Today;
}

/// <summary>A study that is ended without a conclusion, as it stood then.</summary>
/// <param name="Code">Code of the study.</param>
/// <param name="Version">Version of its protocol.</param>
/// <param name="ProtocolSha256">SHA-256 of the protocol locked last.</param>
/// <param name="LockNumber">Number of that lock.</param>
/// <param name="LockedAt">When it was locked, by the clock of that computer.</param>
/// <param name="LockLineSha256">SHA-256 of the line of the study's record about that lock; null where the record has none.</param>
/// <param name="Planned">Planned number of specimens.</param>
public sealed record EndedStudy(
    string Code,
    string Version,
    string ProtocolSha256,
    int LockNumber,
    DateTimeOffset LockedAt,
    string? LockLineSha256,
    int Planned
)
{
    /// <summary>Specimens that had been collected; null where the study's files could not be read.</summary>
    public int? Collected { get; init; }

    /// <summary>Specimens of which something had been tested; null where the study's files could not be read.</summary>
    public int? Tested { get; init; }

    /// <summary>How often changes had been shown, by the study's record.</summary>
    public int Looks { get; init; }

    /// <summary>Day of the last of these looks; null without one.</summary>
    public DateOnly? LastLook { get; init; }
}

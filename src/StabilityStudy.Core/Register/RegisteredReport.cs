using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Register;

/// <summary>What a report in the register is worth today. The zero member is the cautious one.</summary>
public enum ReportStanding
{
    /// <summary>It could not be verified, so nothing that it says counts.</summary>
    NotTrusted,

    /// <summary>Nothing is wrong with it, and nobody who may has decided.</summary>
    NotDecided,

    /// <summary>Everything in it was declined.</summary>
    Declined,

    /// <summary>It was decided on its rows.</summary>
    Decided,
}

/// <summary>A signed report of the register, and what it puts into force.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Standing">What it is worth.</param>
public sealed record RegisteredReport(string File, ReportStanding Standing)
{
    /// <summary>Why nothing in it counts; null where it counts.</summary>
    public string? Why { get; init; }

    /// <summary>Code of the study; null where the file gives none.</summary>
    public string? Code { get; init; }

    /// <summary>Digest of the study's inputs; null where the file gives none.</summary>
    public string? InputDigest { get; init; }

    /// <summary>SHA-256 of its protocol; null where the file gives none.</summary>
    public string? ProtocolSha256 { get; init; }

    /// <summary>SHA-256 of the signed file in each of its states: signatures and what proves them later are only appended.</summary>
    public ImmutableArray<string> FileSha256s { get; init; } = [];

    /// <summary>Printed name of the person who decided; null where nobody did.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>When it was decided, by the clock of that person; null where nobody did.</summary>
    public DateTimeOffset? DecidedAt { get; init; }

    /// <summary>First day in force that the decision states; null for the time of the signature.</summary>
    public DateOnly? Effective { get; init; }

    /// <summary>Day by which the windows are to be reviewed, the last on which they answer; null where none is set.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>Why it was declined, or why a window is shorter than supported; null where nothing is said.</summary>
    public string? Reason { get; init; }

    /// <summary>The input digest, or its beginning, of the report that this one replaces; null where it replaces none.</summary>
    public string? Replaces { get; init; }

    /// <summary>When the decision was signed after which this one decides on the same study again; null for the first.</summary>
    public DateTimeOffset? DecidedAgainAfter { get; init; }

    /// <summary>What could not be checked of a report that counts, in words.</summary>
    public ImmutableArray<string> Reservations { get; init; } = [];

    /// <summary>The analytes that it may be about; empty where nobody can tell, so that it may be any.</summary>
    public ImmutableArray<string> Analytes { get; init; } = [];

    /// <summary>Its rows, each with what was decided on it.</summary>
    public ImmutableArray<RegisteredWindow> Windows { get; init; } = [];

    /// <summary>Whether it was verified and decided, so that its rows and today's rules in it count.</summary>
    public bool Counts => Standing is ReportStanding.Declined or ReportStanding.Decided;

    /// <summary>Its name for people: code of the study and beginning of the digest, or the file.</summary>
    public string Name =>
        Code is { } code && InputDigest is { Length: >= DigestShown } digest
            ? $"{code}-{digest[..DigestShown]}"
            : File;

    /// <summary>First day on which the decision holds: never before it was signed.</summary>
    public DateOnly From
    {
        get
        {
            var signed = DecidedAt is { } at
                ? DateOnly.FromDateTime(at.DateTime)
                : DateOnly.MaxValue;
            return Effective is { } day && day > signed ? day : signed;
        }
    }

    private const int DigestShown = 8;

    /// <summary>Whether this report says that it comes in the place of another.</summary>
    internal bool ComesAfter(RegisteredReport other) =>
        !ReferenceEquals(this, other)
        && (
            (
                Replaces is { Length: > 0 } digest
                && other.InputDigest?.StartsWith(digest, StringComparison.Ordinal) == true
            )
            || (
                DecidedAgainAfter is { } before
                && Code == other.Code
                && other.DecidedAt is { } at
                && (at - before).Duration() < TimeSpan.FromMinutes(1)
            )
        );

    /// <summary>Whether it is the same decision on the same inputs, so that a second copy of a file claims nothing of its own.</summary>
    public bool IsCopyOf(RegisteredReport other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return InputDigest == other.InputDigest
            && DecidedAt == other.DecidedAt
            && DecidedBy == other.DecidedBy;
    }
}

/// <summary>What the protocol of a report says of a row's test and tube.</summary>
/// <param name="AnalyteName">Name of the analyte.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Storage">How the tube waits.</param>
/// <param name="TodaysRule">Today's rule with its source and its second step.</param>
/// <param name="ManufacturerLimit">What the manufacturer allows; null when not stated.</param>
/// <param name="Eligibility">Which tubes are fit.</param>
/// <param name="TimeOrigin">What its times count from.</param>
/// <param name="IsInvented">Whether the study is an invented example.</param>
public sealed record RegisteredHandling(
    string AnalyteName,
    string Unit,
    Storage Storage,
    WindowRule TodaysRule,
    WindowRule? ManufacturerLimit,
    Eligibility Eligibility,
    TimeOrigin TimeOrigin,
    bool IsInvented
);

/// <summary>A row of a report with what was decided on it.</summary>
/// <param name="Row">The row: for what, what the evidence supports, and what today's rule allows.</param>
/// <param name="GroupName">Name of the patient group.</param>
/// <param name="StorageWords">The storage in words, by which one code in two reports shows to be two storages.</param>
/// <param name="State">What is in the waiting tube.</param>
/// <param name="Approved">The window put into force; null where none is.</param>
/// <param name="Interim">A rule shorter than today's until more is known; null for none.</param>
/// <param name="Conditions">The conditions of the window.</param>
public sealed record RegisteredWindow(
    ConcludedWindow Row,
    string GroupName,
    string StorageWords,
    StorageState State,
    TimeSpan? Approved,
    TimeSpan? Interim,
    ImmutableArray<string> Conditions
)
{
    /// <summary>Whether the decision is a text about all rows, which may hold a shorter window that no program can read.</summary>
    public bool IsInWordsOnly { get; init; }

    /// <summary>The anticoagulant of the group; null when not stated.</summary>
    public Anticoagulant? Anticoagulant { get; init; }

    /// <summary>What the protocol says of the test and the tube.</summary>
    public RegisteredHandling? Handling { get; init; }

    /// <summary>Last day of use of the last of its reagent lots; null where that is not recorded of each.</summary>
    public DateOnly? LotsUntil { get; init; }

    /// <summary>The study that is due before a window is used on an instrument or with a lot for which it does not hold; null where it holds, or none is named.</summary>
    public RepeatTier? DueFor(string? instrument, string? lot) =>
        !Covers(instrument, null) ? RepeatTier.Full
        : !Covers(null, lot) ? RepeatTier.Reduced
        : null;

    /// <summary>Whether it holds for an instrument and a lot; one that is not named is left open.</summary>
    internal bool Covers(string? instrument, string? lot) =>
        (instrument is null || Row.Instruments.Contains(instrument))
        && (lot is null || Row.Reagents.Contains(lot));

    /// <summary>Whether every fact of its scope that a question states is true.</summary>
    internal bool Covers(BenchQuestion question) =>
        Covers(question.Instrument, question.Lot)
        && CoversSpin(question)
        && (!question.CountsOpenAsNotTrue || question is { Instrument: not null, Lot: not null });

    /// <summary>Whether the tube was spun so late that it has waited in its storage.</summary>
    public bool CoversSpin(BenchQuestion question) =>
        Handling?.Storage.SpinToTest is not { } longest
        || (question.SpinToTest is { } time ? time <= longest : !question.CountsOpenAsNotTrue);

    /// <summary>Whether two rows can be about one specimen: what is not recorded may be anything.</summary>
    internal bool Overlaps(RegisteredWindow other) =>
        (Row.Analyte, Row.Group, Row.Storage)
            == (other.Row.Analyte, other.Row.Group, other.Row.Storage)
        && Shares(Row.Instruments, other.Row.Instruments)
        && Shares(Row.Reagents, other.Row.Reagents);

    private static bool Shares(ImmutableArray<string> one, ImmutableArray<string> other) =>
        one.IsEmpty || other.IsEmpty || one.Intersect(other).Any();
}

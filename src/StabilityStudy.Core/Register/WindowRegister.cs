namespace StabilityStudy.Core.Register;

/// <summary>How a row of a report stands on a day. The zero member puts nothing into force.</summary>
public enum WindowStanding
{
    /// <summary>The report could not be verified.</summary>
    NotTrusted,

    /// <summary>Nobody who may has decided.</summary>
    NotDecided,

    /// <summary>Today's rule was left in force although a window is supported, or everything was declined.</summary>
    Declined,

    /// <summary>The evidence supports no window.</summary>
    NotSupported,

    /// <summary>Another report came in its place.</summary>
    Superseded,

    /// <summary>A notice takes it away, or speaks against it, and cannot be verified or does not fit the report: until somebody has found out, it is not relied on.</summary>
    InDoubt,

    /// <summary>A notice withdrew it.</summary>
    Withdrawn,

    /// <summary>A new director ended it.</summary>
    EndedByNewDirector,

    /// <summary>It holds from a later day on.</summary>
    NotYet,

    /// <summary>The day of its review has passed.</summary>
    PastReview,

    /// <summary>It is in force.</summary>
    InForce,
}

/// <summary>A row of a report as it stands on a day.</summary>
/// <param name="Report">The report.</param>
/// <param name="Window">The row.</param>
/// <param name="Standing">How it stands.</param>
public sealed record StandingWindow(
    RegisteredReport Report,
    RegisteredWindow Window,
    WindowStanding Standing
)
{
    /// <summary>The other reports with a window in force that can be about the same specimen, none of which says that it replaces the other.</summary>
    public ImmutableArray<string> AlsoClaimedBy { get; init; } = [];

    /// <summary>The report that came in its place; null where none did.</summary>
    public string? SupersededBy { get; init; }

    /// <summary>Day by which it is to be reviewed: of the report, or of the newest notice that states one; null where none is set.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>The notices about it that have an effect on the day, or bring it into doubt, in the order of their signatures.</summary>
    public ImmutableArray<RegisteredNotice> Notices { get; init; } = [];

    /// <summary>The notices about it that have their effect on a later day.</summary>
    public ImmutableArray<RegisteredNotice> Coming { get; init; } = [];

    /// <summary>Which notice brings it into doubt and why, in words; null where none does.</summary>
    public string? Doubt { get; init; }

    /// <summary>The notice that took it, or its longer part, away last; null where none did.</summary>
    public RegisteredNotice? TakenAwayBy =>
        Notices.LastOrDefault(item => item.Counts && item.Notice.TakesAway);
}

/// <summary>The approved windows of a facility: its signed reports, each already verified.</summary>
/// <param name="Reports">The reports, by the names of their files.</param>
public sealed record WindowRegister(ImmutableArray<RegisteredReport> Reports)
{
    /// <summary>The notices, by the names of their files.</summary>
    public ImmutableArray<RegisteredNotice> Notices { get; init; } = [];

    /// <summary>The studies that are known by protocol or lock.</summary>
    public ImmutableArray<RegisteredStudy> Studies { get; init; } = [];

    /// <summary>Gathers what files and folders bring.</summary>
    public static WindowRegister Of(ImmutableArray<RegisterEntry> entries) =>
        new([.. entries.Select(entry => entry.Report).OfType<RegisteredReport>()])
        {
            Notices = [.. entries.Select(entry => entry.Notice).OfType<RegisteredNotice>()],
            Studies = [.. entries.Select(entry => entry.Study).OfType<RegisteredStudy>()],
        };

    /// <summary>Every row of every report as it stands on a day.</summary>
    public ImmutableArray<StandingWindow> On(DateOnly day)
    {
        var notices = new NoticedWindows(this);
        ImmutableArray<RegisteredReport> successors = [.. Reports.Where(CanReplace)];
        ImmutableArray<StandingWindow> windows =
        [
            .. Reports.SelectMany(report =>
            {
                var successor = SuccessorOf(report, successors, day);
                return report.Windows.Select(window =>
                {
                    var told = notices.On(report, window, day);
                    return new StandingWindow(
                        report,
                        told.Window,
                        StandingOf(report, successor, told, day)
                    )
                    {
                        SupersededBy = successor?.Name,
                        Review = told.Review,
                        Doubt = told.Doubt,
                        Coming = told.Coming,
                        Notices = told.Notices,
                    };
                });
            }),
        ];
        var inForce = windows
            .Where(item => item.Standing == WindowStanding.InForce)
            .ToLookup(CellOf);
        return
        [
            .. windows.Select(window =>
                window.Standing == WindowStanding.InForce
                    ? window with
                    {
                        AlsoClaimedBy = Rivals(window, inForce[CellOf(window)]),
                    }
                    : window
            ),
        ];
    }

    /// <summary>The studies that put nothing into force and have no report here, each once and as far as it came by a day.</summary>
    public ImmutableArray<RegisteredStudy> WithoutReport(DateOnly day)
    {
        var reported = Reports.Select(report => report.Code).ToImmutableHashSet();
        return
        [
            .. Notices
                .Where(item => item is { Counts: true, Notice.Study: not null } && item.From <= day)
                .Select(item => new RegisteredStudy(
                    item.File,
                    item.Notice.Study!.Code,
                    StudyStage.Ended
                )
                {
                    On = item.From,
                    Why = item.Notice.Reason,
                })
                .Concat(Studies.Where(study => !reported.Contains(study.Code)))
                .Where(study => !(study.On > day))
                .GroupBy(study => study.Code)
                .Select(same => same.MaxBy(study => study.Stage)!)
                .OrderByDescending(study => study.Stage)
                .ThenBy(study => study.Code, StringComparer.Ordinal),
        ];
    }

    /// <summary>The notices that do not have the effect that they state, each with the reason in words.</summary>
    public ImmutableArray<(RegisteredNotice Notice, string Why)> NoticesWithoutEffect()
    {
        var told = new NoticedWindows(this);
        return
        [
            .. Notices
                .Select(item => (item, told.Fault(item)))
                .Where(pair => pair.Item2 is not null)
                .Select(pair => (pair.item, pair.Item2!)),
        ];
    }

    /// <summary>Reports that could not be verified and may be about an analyte: what they say may be shorter than anything known.</summary>
    public ImmutableArray<RegisteredReport> NotTrusted(string analyte) =>
        [
            .. Reports.Where(report =>
                report.Standing == ReportStanding.NotTrusted
                && (report.Analytes.IsEmpty || report.Analytes.Contains(analyte))
            ),
        ];

    private static (string, string, string) CellOf(StandingWindow item) =>
        (item.Window.Row.Analyte, item.Window.Row.Group, item.Window.Row.Storage);

    private static WindowStanding StandingOf(
        RegisteredReport report,
        RegisteredReport? successor,
        WindowUnderNotices told,
        DateOnly day
    )
    {
        var window = told.Window;
        return report.Standing switch
        {
            ReportStanding.NotTrusted => WindowStanding.NotTrusted,
            ReportStanding.NotDecided => WindowStanding.NotDecided,
            _ when successor is not null => WindowStanding.Superseded,
            _ when report.From > day => WindowStanding.NotYet,
            ReportStanding.Declined => WindowStanding.Declined,
            _ when (window.Approved ?? window.Interim) is null && !window.IsInWordsOnly => window
                .Row
                .Supported
                is null
                ? WindowStanding.NotSupported
                : WindowStanding.Declined,
            _ when told.TakenAway is { } standing => standing,
            _ when told.Review < day => WindowStanding.PastReview,
            _ => WindowStanding.InForce,
        };
    }

    /// <summary>The report that came in the place of another by a day; one that nobody decided on replaces nothing.</summary>
    public RegisteredReport? SuccessorOf(RegisteredReport report, DateOnly day) =>
        SuccessorOf(report, [.. Reports.Where(CanReplace)], day);

    private static bool CanReplace(RegisteredReport report) =>
        report
            is { Counts: true }
                and ({ Replaces.Length: > 0 } or { DecidedAgainAfter: not null });

    private static RegisteredReport? SuccessorOf(
        RegisteredReport report,
        ImmutableArray<RegisteredReport> successors,
        DateOnly day
    ) => successors.FirstOrDefault(other => other.From <= day && other.ComesAfter(report));

    private static ImmutableArray<string> Rivals(
        StandingWindow window,
        IEnumerable<StandingWindow> inForce
    ) =>
        [
            .. inForce
                .Where(other =>
                    !ReferenceEquals(other.Report, window.Report)
                    && !other.Report.IsCopyOf(window.Report)
                    && other.Window.Overlaps(window.Window)
                )
                .Select(other => other.Report.Name)
                .Distinct(),
        ];
}

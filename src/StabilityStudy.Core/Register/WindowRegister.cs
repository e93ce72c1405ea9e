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
}

/// <summary>The approved windows of a facility: its signed reports, each already verified.</summary>
/// <param name="Reports">The reports, by the names of their files.</param>
public sealed record WindowRegister(ImmutableArray<RegisteredReport> Reports)
{
    /// <summary>Every row of every report as it stands on a day.</summary>
    public ImmutableArray<StandingWindow> On(DateOnly day)
    {
        ImmutableArray<StandingWindow> windows =
        [
            .. Reports.SelectMany(report =>
                report.Windows.Select(window => new StandingWindow(
                    report,
                    window,
                    StandingOf(report, window, day)
                )
                {
                    SupersededBy = Successor(report, day)?.Name,
                })
            ),
        ];
        return
        [
            .. windows.Select(window => window with { AlsoClaimedBy = Rivals(window, windows) }),
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

    private WindowStanding StandingOf(
        RegisteredReport report,
        RegisteredWindow window,
        DateOnly day
    ) =>
        report.Standing switch
        {
            ReportStanding.NotTrusted => WindowStanding.NotTrusted,
            ReportStanding.NotDecided => WindowStanding.NotDecided,
            _ when Successor(report, day) is not null => WindowStanding.Superseded,
            _ when report.From > day => WindowStanding.NotYet,
            ReportStanding.Declined => WindowStanding.Declined,
            _ when (window.Approved ?? window.Interim) is null && !window.IsInWordsOnly => window
                .Row
                .Supported
                is null
                ? WindowStanding.NotSupported
                : WindowStanding.Declined,
            _ when report.Review < day => WindowStanding.PastReview,
            _ => WindowStanding.InForce,
        };

    /// <summary>The report that came in the place of another by a day; one that nobody decided on replaces nothing.</summary>
    private RegisteredReport? Successor(RegisteredReport report, DateOnly day) =>
        Reports.FirstOrDefault(other =>
            other.Counts && other.From <= day && other.ComesAfter(report)
        );

    private static ImmutableArray<string> Rivals(
        StandingWindow window,
        ImmutableArray<StandingWindow> all
    ) =>
        window.Standing != WindowStanding.InForce
            ? []
            :
            [
                .. all.Where(other =>
                        other.Standing == WindowStanding.InForce
                        && !ReferenceEquals(other.Report, window.Report)
                        && !other.Report.IsCopyOf(window.Report)
                        && other.Window.Overlaps(window.Window)
                    )
                    .Select(other => other.Report.Name)
                    .Distinct(),
            ];
}

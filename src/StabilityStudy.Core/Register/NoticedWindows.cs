using StabilityStudy.Core.Notices;

namespace StabilityStudy.Core.Register;

/// <summary>A row of a report as the notices of a day leave it.</summary>
/// <param name="Window">The row, with what stays of its window.</param>
/// <param name="Review">Day by which it is to be reviewed; null where none is set.</param>
/// <param name="TakenAway">How it stands where nothing of it stays, or where nobody can tell; null where no notice speaks against it.</param>
/// <param name="Doubt">Why nobody can tell, in words; null where everybody can.</param>
/// <param name="Notices">The notices that lead to this.</param>
/// <param name="Coming">The notices that have their effect later.</param>
internal sealed record WindowUnderNotices(
    RegisteredWindow Window,
    DateOnly? Review,
    WindowStanding? TakenAway,
    string? Doubt,
    ImmutableArray<RegisteredNotice> Notices,
    ImmutableArray<RegisteredNotice> Coming
);

/// <summary>
/// Applies notices to the rows of reports. A notice that counts has the effect that it states. One that would take windows away and cannot be verified, is not
/// signed, or does not fit the report brings its windows into doubt; one that would keep them has then no effect. No notice makes a window longer.
/// </summary>
internal sealed class NoticedWindows
{
    private readonly ImmutableArray<RegisteredNotice> _all;
    private readonly ILookup<string, RegisteredReport> _byState;
    private readonly ILookup<string, RegisteredReport> _byInputs;
    private readonly ILookup<RegisteredReport, Told> _byReport;

    public NoticedWindows(WindowRegister register)
    {
        _all = [.. register.Notices.OrderBy(item => item.SignedAt ?? DateTimeOffset.MaxValue)];
        _byState = register
            .Reports.SelectMany(report => report.FileSha256s.Select(state => (state, report)))
            .ToLookup(pair => pair.state, pair => pair.report);
        _byInputs = register.Reports.ToLookup(report => report.InputDigest ?? "");
        var byCode = register.Reports.ToLookup(report => report.Code ?? "");
        _byReport = _all.SelectMany(item =>
                item.Notice.Study is { } study
                    // A study that was ended has no report; whoever removes the notice from its folder meets it here.
                    ? byCode[study.Code]
                        .Where(report => report.ProtocolSha256 == study.ProtocolSha256)
                        .Select(report =>
                            (
                                report,
                                new Told(
                                    item,
                                    null,
                                    item.Why
                                        ?? $"It ends the study without a conclusion, signed by {item.Notice.By}."
                                )
                            )
                        )
                    : item.Notice.Reports.SelectMany(about =>
                        _byState[about.FileSha256]
                            .Concat(_byInputs[about.InputDigest])
                            .Distinct(ReferenceEqualityComparer.Instance)
                            .Cast<RegisteredReport>()
                            .Where(report => IsMeant(item, about, report))
                            .Select(report =>
                                (report, Told.Of(item, about, item.Why ?? FaultAbout(item, about)))
                            )
                    )
            )
            .ToLookup(
                pair => pair.report,
                pair => pair.Item2,
                (IEqualityComparer<RegisteredReport>)ReferenceEqualityComparer.Instance
            );
    }

    /// <summary>A row as the notices of a day leave it.</summary>
    public WindowUnderNotices On(RegisteredReport report, RegisteredWindow window, DateOnly day) =>
        _byReport[report]
            .Aggregate(
                new WindowUnderNotices(window, report.Review, null, null, [], []),
                (so, told) => After(so, told, window, day)
            );

    /// <summary>Why a notice has no effect, or none that anybody could rely on, in words; null where it has the one that it states.</summary>
    public string? Fault(RegisteredNotice item) =>
        item.Counts
            ? item
                .Notice.Reports.Select(about => FaultAbout(item, about))
                .FirstOrDefault(fault => fault is not null)
            : item.Why;

    /// <summary>Whether a notice means a report: the very file, a copy of its decision, or, where the file is not here, any of the same inputs that was not decided on since.</summary>
    private bool IsMeant(RegisteredNotice item, NoticedReport about, RegisteredReport report) =>
        _byState[about.FileSha256].ToImmutableArray() is [_, ..] exact
            ? exact.Any(one => ReferenceEquals(one, report) || report.IsCopyOf(one))
            : !(item.Counts && report.DecidedAt > item.SignedAt);

    private string? FaultAbout(RegisteredNotice item, NoticedReport about) =>
        _byState[about.FileSha256].FirstOrDefault() is not { } report
            ? _byInputs[about.InputDigest].Any()
                ? $"It is about another file of report {about.Name} than the one in this folder."
                : $"It is about report {about.Name}, which is not in this folder, or not as it was signed."
            : report.Counts
            && about.Windows.Any(window => !report.Windows.Any(row => IsAbout(window, row)))
                ? $"It names windows that report {about.Name} did not put into force."
                : item.Notice.Kind == NoticeKind.Reviewed && !IsOfDirector(item, about, report)
                    ? $"It is signed by {item.Notice.By}, who neither decided on report {about.Name} nor adopted it."
                    : null;

    /// <summary>Whether the signer of a review is the one who decided, or a director who had adopted the report before.</summary>
    private bool IsOfDirector(
        RegisteredNotice item,
        NoticedReport about,
        RegisteredReport report
    ) =>
        item.Notice.By == report.DecidedBy
        || _all.TakeWhile(other => !ReferenceEquals(other, item))
            .Any(other =>
                other.Counts
                && other.Notice.Kind == NoticeKind.Adopted
                && other.Notice.By == item.Notice.By
                && other.Notice.Reports.Any(one => one.FileSha256 == about.FileSha256)
            );

    private static WindowUnderNotices After(
        WindowUnderNotices so,
        Told told,
        RegisteredWindow window,
        DateOnly day
    )
    {
        var (item, about, fault) = told;
        return about is null
            // Which rows a notice means is as doubtful as the rest of it.
            ? item.Notice.TakesAway || item.Notice.Study is not null
                ? InDoubt(so, item, fault)
                : so
            : about.Windows.FirstOrDefault(row => IsAbout(row, window)) is not { } row
                ? so
                : item.From > day
                    ? so with
                    {
                        Coming = so.Coming.Add(item),
                    }
                    : item.Notice.TakesAway
                        ? Taken(so, item, row)
                        : so with
                        {
                            Review = item.Notice.Review ?? so.Review,
                            Notices = so.Notices.Add(item),
                        };
    }

    private static WindowUnderNotices InDoubt(
        WindowUnderNotices so,
        RegisteredNotice item,
        string? fault
    ) =>
        so.TakenAway is null or WindowStanding.InDoubt
            ? so with
            {
                TakenAway = WindowStanding.InDoubt,
                Doubt = $"{item.File}: {fault}",
                Notices = so.Notices.Add(item),
            }
            : so;

    /// <summary>Of what two notices leave, the shorter holds; what one has taken away entirely does not come back.</summary>
    private static WindowUnderNotices Taken(
        WindowUnderNotices so,
        RegisteredNotice item,
        NoticedWindow row
    ) =>
        so with
        {
            Notices = so.Notices.Add(item),
            Window =
                row.Remaining is { } stays && stays < so.Window.Approved
                    ? so.Window with
                    {
                        Approved = stays,
                    }
                    : so.Window,
            TakenAway =
                row.Remaining is not null ? so.TakenAway
                : item.Notice.Kind == NoticeKind.EndedByNewDirector
                    ? WindowStanding.EndedByNewDirector
                : WindowStanding.Withdrawn,
        };

    private static bool IsAbout(NoticedWindow window, RegisteredWindow row) =>
        (window.Analyte, window.Group, window.Storage, window.Window)
            == (row.Row.Analyte, row.Row.Group, row.Row.Storage, row.Approved ?? row.Interim)
        && window.Instruments.SequenceEqual(row.Row.Instruments);

    /// <summary>A notice as it concerns a report.</summary>
    /// <param name="Notice">The notice.</param>
    /// <param name="About">What it says of the report; null where that cannot be relied on.</param>
    /// <param name="Fault">Why not, in words.</param>
    private sealed record Told(RegisteredNotice Notice, NoticedReport? About, string? Fault)
    {
        public static Told Of(RegisteredNotice notice, NoticedReport about, string? fault) =>
            new(notice, fault is null ? about : null, fault);
    }
}

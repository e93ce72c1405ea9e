using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Notices;

/// <summary>Makes notices about signed reports, from what these put into force.</summary>
public static class NoticeMaking
{
    private const string None = "none";

    /// <summary>Makes a notice.</summary>
    /// <param name="reports">The signed reports; at least one.</param>
    /// <param name="request">What is asked for.</param>
    /// <param name="options">Whom to trust; a report whose signers nobody trusts yet is taken all the same, and the register asks again.</param>
    public static NoticeAttempt Of(
        ImmutableArray<SignedReportFile> reports,
        NoticeRequest request,
        VerificationOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        var about = ImmutableArray.CreateBuilder<NoticedReport>();
        var left = request.Windows.Select(item => item.Row).ToHashSet(StringComparer.Ordinal);
        string? role = null;
        var review = request.Review;
        foreach (var file in reports)
        {
            var found = ReportVerifier.Verify(file.Bytes, options);
            if (WhyNot(found) is { } why)
            {
                return new NoticeAttempt.Refused($"{file.Name}: {why}");
            }

            var analysis = found.Analysis!;
            var report = RegisterReading.Decided(file.Name, file.Bytes, found);
            var (windows, whyNot) = Windows(report, analysis.Protocol, request);
            if (whyNot is not null)
            {
                return new NoticeAttempt.Refused($"{file.Name}: {whyNot}");
            }

            if (request is { Kind: NoticeKind.Reviewed, Review: null })
            {
                if (analysis.Protocol.ReviewAfter is not { } after)
                {
                    return new NoticeAttempt.Refused(
                        $"{file.Name}: Its protocol states no review_after. Give the day of the next review: a window that nobody looks at again is not kept but forgotten."
                    );
                }

                var next = request.Today.AddDays(Math.Max(1, after.Days));
                review = review < next ? review : next;
            }

            role ??= analysis.Protocol.Signatories.Last(analysis.Protocol.Decides).Role;
            var rows = Candidates(report, request).Select(window => window.Row).ToImmutableArray();
            left.RemoveWhere(name => RowNames.Find(name, rows) is not null);
            about.Add(
                new NoticedReport(
                    analysis.Protocol.Code,
                    analysis.Identity.InputDigest,
                    report.FileSha256s[^1],
                    report.DecidedBy ?? "",
                    windows
                )
            );
        }

        if (left.Count > 0)
        {
            return new NoticeAttempt.Refused(
                $"{string.Join(", ", left.Order(StringComparer.Ordinal).Select(name => $"\"{name}\""))} names no window in force of any of the reports, or more than one."
            );
        }

        if (about.Select(item => item.FileSha256).Distinct().Count() < about.Count)
        {
            return new NoticeAttempt.Refused("A report is named twice.");
        }

        var takesAway = Notice.TakesAwayWindows(request.Kind);
        var notice = new Notice(request.Kind, request.By, role ?? "", request.Reason)
        {
            From = takesAway ? request.From : null,
            LooksBack = takesAway && request.LooksBack,
            Review = takesAway ? null : review,
            Reports = about.ToImmutable(),
        };
        return NoticeDocumentFile.Drawn(notice, request.Paper);
    }

    private static string? WhyNot(ReportVerification found) =>
        found.Document != DocumentKind.Report ? "This is no report."
        : found.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } failed
            ? $"It does not verify, so nothing in it counts: {failed.Sentences[0]}"
        : found.Analysis is null || found.Conclusions.IsEmpty
            ? "It could not be computed again under the rules of this version. Use the version that made it."
        : found.Decision is not { At: not null } ? "Nobody has decided on it."
        : null;

    /// <summary>The windows that a notice of the kind can be about.</summary>
    private static ImmutableArray<RegisteredWindow> Candidates(
        RegisteredReport report,
        NoticeRequest request
    ) =>
        [
            .. report.Windows.Where(window =>
                window.IsInWordsOnly
                || (
                    Notice.TakesAwayWindows(request.Kind)
                        ? window.Approved > window.Row.Today
                        : (window.Approved ?? window.Interim) is not null
                )
            ),
        ];

    private static (ImmutableArray<NoticedWindow> Windows, string? Why) Windows(
        RegisteredReport report,
        StudyProtocol protocol,
        NoticeRequest request
    )
    {
        var takesAway = Notice.TakesAwayWindows(request.Kind);
        var candidates = Candidates(report, request);
        if (candidates.IsEmpty)
        {
            return (
                [],
                takesAway
                    ? "It puts no window into force that is longer than today's rule, so there is nothing to take away. A rule shorter than today's is ended by a new decision."
                    : "It puts no window into force."
            );
        }

        var rows = candidates.Select(window => window.Row).ToImmutableArray();
        var named = ImmutableArray.CreateBuilder<(RegisteredWindow Window, TimeSpan? Stays)>();
        if (
            !request.Windows.IsEmpty
            && request.Windows.All(item => RowNames.Find(item.Row, rows) is null)
        )
        {
            return (
                [],
                $"{string.Join(", ", request.Windows.Select(item => $"\"{item.Row}\""))} names no window of it in force, or more than one. Its windows: {string.Join(", ", rows.Select(one => RowNames.Of(one, rows)))}."
            );
        }

        foreach (var item in request.Windows)
        {
            // One that another of the reports has.
            if (RowNames.Find(item.Row, rows) is not { } row)
            {
                continue;
            }

            var window = candidates.Single(one => ReferenceEquals(one.Row, row));
            TimeSpan? stays = null;
            if (item.Text != None)
            {
                if (!DurationText.TryParseWindow(item.Text, out var shorter))
                {
                    return (
                        [],
                        $"\"{item.Text}\" is no window: write \"6 h\", \"7 h 30 min\" or \"none\"."
                    );
                }

                if (shorter <= row.Today || !(shorter < window.Approved))
                {
                    return (
                        [],
                        $"What stays of {item.Row} is longer than today's {DurationText.FormatWindow(row.Today)} and shorter than what was approved, {(window.Approved is { } approved ? DurationText.FormatWindow(approved) : "stated in words")}; \"none\" leaves today's rule."
                    );
                }

                stays = shorter;
            }

            named.Add((window, stays));
        }

        return named.Select(item => item.Window).Distinct().Count() < named.Count
            ? ([], "A window is named twice.")
            : (
                [
                    .. named
                        .DefaultIfEmpty()
                        .SelectMany(item =>
                            item.Window is null
                                ? candidates.Select(window => Noticed(window, null))
                                : [Noticed(item.Window, item.Stays)]
                        ),
                ],
                null
            );

        NoticedWindow Noticed(RegisteredWindow window, TimeSpan? stays)
        {
            var row = window.Row;
            var noticed = new NoticedWindow(
                row.Analyte,
                row.Group,
                window.GroupName,
                row.Storage,
                window.StorageWords,
                row.Today,
                report.From
            )
            {
                Window = window.Approved ?? window.Interim,
                Remaining = stays,
                Instruments = row.Instruments,
                Lots = row.Reagents,
            };
            return takesAway
                ? noticed with
                {
                    TimePoints =
                    [
                        .. protocol
                            .TimePointsOf(
                                protocol.Analytes.Single(analyte => analyte.Id == row.Analyte),
                                row.Group
                            )
                            .Select(point => point.Delay)
                            .Where(delay =>
                                delay > noticed.Kept && !(delay > (noticed.Window ?? delay))
                            ),
                    ],
                }
                : noticed;
        }
    }
}

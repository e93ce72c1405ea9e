using StabilityStudy.Core.Notices;

namespace StabilityStudy.Reporting.Report.Notices;

/// <summary>A notice as a document to be signed: what is decided, what to look back at, and which signed files or which protocol it is about.</summary>
public static class NoticeDocument
{
    private const int DigestShown = 16;

    /// <summary>The document.</summary>
    /// <param name="notice">What it says.</param>
    /// <param name="signatories">Who signs it.</param>
    /// <param name="sha256">SHA-256 of the attached data, lower-case hexadecimal.</param>
    /// <param name="paper">Paper size.</param>
    public static ReportModel Build(
        Notice notice,
        ImmutableArray<Signatory> signatories,
        string sha256,
        PaperSize paper
    )
    {
        ArgumentNullException.ThrowIfNull(notice);
        ArgumentNullException.ThrowIfNull(sha256);
        return new ReportModel(
            NoticeWords.Title(notice.Kind),
            "en-US",
            paper,
            new RunningHeader(
                NoticeWords.Subject(notice),
                "valid only with the signature on page 1",
                $"notice {sha256[..DigestShown]} · notice.toml is attached to this file"
            ),
            [
                Decided(notice, signatories),
                .. notice.LooksBack ? [LookBackSection.Of(notice)] : ImmutableArray<Section>.Empty,
                About(notice),
                Cautions(notice),
            ]
        );
    }

    private static Section Decided(Notice notice, ImmutableArray<Signatory> signatories) =>
        new(
            "What is decided",
            StartsOnNewPage: true,
            [
                new Paragraph(NoticeWords.Decision(notice), ParagraphStyle.Lead),
                new Paragraph("Reason: " + notice.Reason, ParagraphStyle.Strong),
                notice.Study is { } study ? Standing(study)
                : notice.TakesAway ? Taken(notice)
                : Kept(notice),
                new Paragraph(NoticeWords.Consequence(notice), ParagraphStyle.Body),
            ]
        )
        {
            Foot =
            [
                new Paragraph(
                    "For qualified laboratory staff; the medical director decides. Local regulation, the manufacturer's instructions and the accreditor's rules prevail. Where the anticoagulant of a specimen is unknown, the shortest window applies.",
                    ParagraphStyle.Small
                ),
                new SignatureBoxes([
                    .. signatories.Select(signatory => new SignatureBox(
                        $"{TradeWords.Capital(signatory.Role)}: {notice.By}",
                        signatory.Meaning,
                        "NOT SIGNED"
                    )),
                ]),
            ],
        };

    private static Table Taken(Notice notice) =>
        new(
            "Windows that are no longer in force",
            [
                new Column("Analyte", ColumnAlignment.Left, 1),
                new Column("Patient group", ColumnAlignment.Left, 2),
                new Column("Storage", ColumnAlignment.Left, 2.4),
                new Column("Until now", ColumnAlignment.Right, 1.1),
                new Column($"From {NumberText.Day(notice.From)}", ColumnAlignment.Left, 2),
                new Column("Time points", ColumnAlignment.Left, 1.5),
                new Column("Report", ColumnAlignment.Left, 1.8),
            ],
            [
                .. Rows(
                    notice,
                    (report, window) =>
                        [
                            NoticeWords.Time(window.Window),
                            window.Remaining is { } stays
                                ? $"{DurationText.FormatWindow(stays)} stays"
                                : $"today's {DurationText.FormatWindow(window.Today)}",
                            string.Join(", ", window.TimePoints.Select(DurationText.FormatWindow)),
                            report.Name,
                        ]
                ),
            ],
            null
        );

    private static Table Kept(Notice notice) =>
        new(
            "Windows that stay in force",
            [
                new Column("Analyte", ColumnAlignment.Left, 1),
                new Column("Patient group", ColumnAlignment.Left, 2),
                new Column("Storage", ColumnAlignment.Left, 2.4),
                new Column("Window", ColumnAlignment.Right, 1.1),
                new Column("In force from", ColumnAlignment.Left, 1.4),
                new Column("Decided by", ColumnAlignment.Left, 2),
                new Column("Report", ColumnAlignment.Left, 1.8),
            ],
            [
                .. Rows(
                    notice,
                    (report, window) =>
                        [
                            NoticeWords.Time(window.Window),
                            NumberText.Day(window.InForceFrom),
                            report.DecidedBy,
                            report.Name,
                        ]
                ),
            ],
            "Conditions, instruments and reagent lots stay as the reports state them."
        );

    private static IEnumerable<Row> Rows(
        Notice notice,
        Func<NoticedReport, NoticedWindow, ImmutableArray<string>> more
    ) =>
        notice.Reports.SelectMany(report =>
            report.Windows.Select(window => new Row([
                new TableCell(window.Analyte),
                new TableCell(window.GroupName),
                new TableCell(window.StorageWords),
                .. more(report, window).Select(text => new TableCell(text)),
            ]))
        );

    private static DefinitionList Standing(EndedStudy study) =>
        new([
            new Definition("Planned", NoticeWords.Specimens(study.Planned)),
            new Definition("Collected", NoticeWords.Specimens(study.Collected)),
            new Definition("Tested", NoticeWords.Specimens(study.Tested)),
            new Definition("Looks", NoticeWords.Looks(study)),
        ]);

    private static Section About(Notice notice) =>
        new(
            "What this notice is about",
            StartsOnNewPage: false,
            [
                .. notice.Reports.SelectMany(report =>
                    new Block[]
                    {
                        new Paragraph(
                            $"Report {report.Name}, decided by {report.DecidedBy}",
                            ParagraphStyle.Body
                        ),
                        new MonospaceLines([
                            "inputs       " + report.InputDigest,
                            "signed file  " + report.FileSha256,
                        ]),
                    }
                ),
                .. notice.Study is { } study
                    ?
                    [
                        new Paragraph(
                            $"Study {study.Code}, version {study.Version} of its protocol, lock {NumberText.Count(study.LockNumber)} of {NumberText.Minute(study.LockedAt)}",
                            ParagraphStyle.Body
                        ),
                        new MonospaceLines([
                            "protocol     " + study.ProtocolSha256,
                            "lock line    "
                                + (
                                    study.LockLineSha256
                                    ?? "none: the record of the study does not name the lock"
                                ),
                        ]),
                    ]
                    : ImmutableArray<Block>.Empty,
            ]
        );

    private static Section Cautions(Notice notice) =>
        new(
            "This document",
            StartsOnNewPage: false,
            [
                new Bullets([
                    "It was made from notice.toml, which is attached to it. \"stability-study verify\" draws it again from that file and compares every byte.",
                    notice.Study is null
                        ? "Digests are SHA-256: of the inputs that the report computes from, and of its signed file as it was when this notice was made. Keep this file in the folder of the signed reports; \"stability-study supported-windows\" applies it from there."
                        : "Digests are SHA-256: of protocol.toml as it was locked last, and of the line of record.jsonl about that lock. Keep this file as ended.pdf in the study folder, and a copy in the folder of the signed reports.",
                    "Study results never enter a patient's record. Not a medical device.",
                ]),
            ]
        );
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Register;

/// <summary>
/// Reads a signed report into the register by verifying it. Signatures and revisions must hold in every part, the figures must follow from the data under
/// the rules of this version, and the criteria must not have come after the data; else nothing in the file counts.
/// </summary>
public static class RegisterReading
{
    /// <summary>Signatures and revisions come first among the parts.</summary>
    private const int PartsThatMustHold = 2;

    /// <summary>Reads a file of the register.</summary>
    /// <param name="file">Name of the file, for people.</param>
    /// <param name="pdf">Its bytes.</param>
    /// <param name="options">Whom to trust.</param>
    public static RegisterEntry Read(
        string file,
        ReadOnlyMemory<byte> pdf,
        VerificationOptions options
    ) => Entry(file, pdf, ReportVerifier.Verify(pdf, options));

    /// <summary>What a file that was verified brings into the register.</summary>
    internal static RegisterEntry Entry(
        string file,
        ReadOnlyMemory<byte> pdf,
        ReportVerification found
    ) =>
        found.Document switch
        {
            DocumentKind.Report => new RegisterEntry { Report = Report(file, pdf, found) },
            DocumentKind.Protocol => new RegisterEntry { Study = Study(file, found) },
            DocumentKind.Notice => new RegisterEntry { Notice = Notice(file, found) },
        };

    internal static RegisteredReport Report(
        string file,
        ReadOnlyMemory<byte> pdf,
        ReportVerification found
    )
    {
        var named = Named(file, pdf, found);
        if (found.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } failed)
        {
            return named with { Why = failed.Sentences[0] };
        }

        if (found.Analysis is not { } analysis || found.Conclusions.IsEmpty)
        {
            return named with
            {
                Why =
                    "It could not be computed again under the rules of this version, so its windows are not compared.",
            };
        }

        var withRows = WithRows(named, analysis);
        // A signature that is missing is no fault of those that are there.
        if (found is { Decision: null, LacksSignatures: true })
        {
            return withRows with
            {
                Standing = ReportStanding.NotDecided,
                Why = "Not everybody has signed, and no signature in it decides.",
            };
        }

        if (
            found
                .Parts.Take(PartsThatMustHold)
                .FirstOrDefault(part => part.Outcome != PartOutcome.Holds) is
            { } open
        )
        {
            return withRows with { Why = open.Sentences[0] };
        }

        return found.Decision is not { At: not null } signed
            ? withRows with
            {
                Standing = ReportStanding.NotDecided,
                Why = "No signature in it states a decision and its time.",
            }
            : Decided(withRows, analysis, signed, found);
    }

    /// <summary>What a report with a decision would put into force if whoever signed it is to be trusted.</summary>
    internal static RegisteredReport Decided(
        string file,
        ReadOnlyMemory<byte> pdf,
        ReportVerification found
    )
    {
        var analysis = found.Analysis!;
        return Decided(
            WithRows(Named(file, pdf, found), analysis),
            analysis,
            found.Decision!,
            found
        );
    }

    /// <summary>A notice counts as a report does: signatures and revisions hold, nothing fails, and what an earlier version drew need not be drawn again.</summary>
    private static RegisteredNotice Notice(string file, ReportVerification found)
    {
        var notice = new RegisteredNotice(file, NoticeStanding.NotTrusted, found.Notice!)
        {
            SignedAt = found.FirstSignedAt,
        };
        return found.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } failed
                ? notice with
                {
                    Why = failed.Sentences[0],
                }
            : found.LacksSignatures
                ? notice with
                {
                    Standing = NoticeStanding.NotSigned,
                    Why = $"{found.Notice!.By} has not signed it.",
                }
            : found
                .Parts.Take(found.IsOfLaterVersion ? found.Parts.Length : PartsThatMustHold)
                .FirstOrDefault(part => part.Outcome != PartOutcome.Holds)
                is { } open
                ? notice with
                {
                    Why = open.Sentences[0],
                }
            : notice with { Standing = NoticeStanding.Counts, Reservations = NotChecked(found) };
    }

    private static ImmutableArray<string> NotChecked(ReportVerification found) =>
        [
            .. found
                .Parts.Where(part => part.Outcome == PartOutcome.NotChecked)
                .Select(part => part.Sentences[0]),
        ];

    /// <summary>A protocol document shows a study that was planned, whoever signed it.</summary>
    private static RegisteredStudy Study(string file, ReportVerification found) =>
        new(file, found.StudyCode ?? "", StudyStage.Planned)
        {
            Why =
                found.Parts.FirstOrDefault(part => part.Outcome == PartOutcome.Fails) is { } failed
                    ? failed.Sentences[0]
                : found.LacksSignatures ? "Not everybody has signed the protocol document."
                : null,
        };

    /// <summary>A study folder in which a protocol is locked; null where none is that can be read.</summary>
    /// <param name="folder">Name of the folder, for people.</param>
    /// <param name="files">Protocol, lock and copies of locked protocols.</param>
    public static RegisterEntry? ReadFolder(string folder, StudyBytes files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (
            !files.Files.TryGetValue(LockFile.Name, out var bytes)
            || !LockFile.Read(bytes).TryGet(out var locks)
            || locks.All.IsEmpty
        )
        {
            return null;
        }

        var first = locks.All[0].Lock;
        return new RegisterEntry
        {
            Study = new RegisteredStudy(
                folder,
                LockedProtocols.Read(locks.All[^1].Lock, files.Files)?.Code ?? folder,
                StudyStage.Locked
            )
            {
                On = DateOnly.FromDateTime(first.At.DateTime),
            },
        };
    }

    private static RegisteredReport Named(
        string file,
        ReadOnlyMemory<byte> pdf,
        ReportVerification found
    ) =>
        new(file, ReportStanding.NotTrusted)
        {
            Code = found.StudyCode,
            InputDigest = found.InputDigest,
            ProtocolSha256 = found.Analysis?.Identity.HashOf(StudyBytes.ProtocolName),
            FileSha256s = FileStates.Of(pdf),
            Analytes = [.. found.Analysis?.Protocol.Analytes.Select(analyte => analyte.Id) ?? []],
        };

    private static RegisteredReport WithRows(RegisteredReport report, StudyAnalysis analysis) =>
        report with
        {
            Replaces = analysis.Facts.Revision?.Replaces,
            Windows = [.. ConcludedWindow.Of(analysis).Select(row => Undecided(analysis, row))],
        };

    private static RegisteredReport Decided(
        RegisteredReport report,
        StudyAnalysis analysis,
        SignedDecision signed,
        ReportVerification found
    )
    {
        var decision = signed.Decision;
        return report with
        {
            Standing =
                decision.Kind == DecisionKind.Decline
                    ? ReportStanding.Declined
                    : ReportStanding.Decided,
            DecidedBy = signed.By,
            DecidedAt = signed.At,
            Effective = decision.Effective,
            Review = decision.Review,
            Reason = decision.Reason,
            DecidedAgainAfter = decision.Earlier?.At,
            Reservations = NotChecked(found),
            Windows = decision.Windows.IsEmpty
                ? [.. report.Windows.Select(window => WithoutRows(window, decision))]
                :
                [
                    .. decision.Windows.Select(window =>
                        Undecided(analysis, window.Row) with
                        {
                            Approved = window.Approved,
                            Interim = window.Interim,
                            Conditions =
                            [
                                .. window.Conditions.Select(number =>
                                    decision.Conditions[number - 1]
                                ),
                            ],
                        }
                    ),
                ],
        };
    }

    /// <summary>A decision of the first form, on all rows at once.</summary>
    private static RegisteredWindow WithoutRows(
        RegisteredWindow window,
        ApproverDecision decision
    ) =>
        decision.Kind switch
        {
            DecisionKind.Approve => window with { Approved = window.Row.Supported },
            DecisionKind.Conditions => window with
            {
                IsInWordsOnly = true,
                Conditions = [decision.Reason ?? ""],
            },
            DecisionKind.Decline => window,
        };

    private static RegisteredHandling HandlingOf(
        StudyAnalysis analysis,
        ConcludedWindow row,
        Storage storage
    )
    {
        var analyte = analysis.Protocol.Analytes.Single(item => item.Id == row.Analyte);
        return new(
            analyte.Name,
            analyte.ShownUnit,
            storage,
            analyte.StandardWindowOf(row.Group, row.Storage),
            analyte.ManufacturerLimit,
            analysis.Protocol.Eligibility,
            analysis.Protocol.TimeOrigin,
            analysis.Facts.Invented
        );
    }

    private static DateOnly? LotsUntil(StudyAnalysis analysis, ConcludedWindow row)
    {
        var ends = row
            .Reagents.Select(code =>
                analysis
                    .Facts.Lots.FirstOrDefault(lot => lot.Id == code && lot.Analyte == row.Analyte)
                    ?.Expires
            )
            .ToArray();
        return ends.Any(end => end is null) ? null : ends.Max();
    }

    private static RegisteredWindow Undecided(StudyAnalysis analysis, ConcludedWindow row)
    {
        var protocol = analysis.Protocol;
        var group = protocol.Groups.Single(item => item.Id == row.Group);
        var storage = protocol.Storages.Single(item => item.Id == row.Storage);
        var since = protocol.TimeOrigin == TimeOrigin.Thawing ? ", since thawing" : "";
        return new(row, group.Name, StorageWords.Of(storage) + since, storage.State, null, null, [])
        {
            Anticoagulant = group.Anticoagulant,
            Handling = HandlingOf(analysis, row, storage),
            LotsUntil = LotsUntil(analysis, row),
        };
    }
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
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

    /// <summary>Reads a file of the register; null for a protocol document, which puts nothing into force.</summary>
    /// <param name="file">Name of the file, for people.</param>
    /// <param name="pdf">Its bytes.</param>
    /// <param name="options">Whom to trust.</param>
    public static RegisteredReport? Read(
        string file,
        ReadOnlyMemory<byte> pdf,
        VerificationOptions options
    )
    {
        var found = ReportVerifier.Verify(pdf, options);
        return found.IsProtocol ? null : Of(file, found);
    }

    /// <summary>The same from a verification.</summary>
    internal static RegisteredReport Of(string file, ReportVerification found)
    {
        var named = new RegisteredReport(file, ReportStanding.NotTrusted)
        {
            Code = found.StudyCode,
            InputDigest = found.InputDigest,
            Analytes = [.. found.Analysis?.Protocol.Analytes.Select(analyte => analyte.Id) ?? []],
        };
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

        var withRows = named with
        {
            Replaces = analysis.Facts.Revision?.Replaces,
            Windows = [.. ConcludedWindow.Of(analysis).Select(row => Undecided(analysis, row))],
        };
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
            Reservations =
            [
                .. found
                    .Parts.Where(part => part.Outcome == PartOutcome.NotChecked)
                    .Select(part => part.Sentences[0]),
            ],
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
        };
    }
}

using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A document that follows from what is inside it, so that it may be signed.</summary>
/// <param name="Subject">What is signed.</param>
/// <param name="MadeBy">The version that made it.</param>
/// <param name="NotRecomputed">What this version cannot compute again of a document of another version; empty for its own.</param>
/// <param name="Before">The signatures on it so far.</param>
internal sealed record Signable(
    SignedSubject Subject,
    string MadeBy,
    ImmutableArray<string> NotRecomputed,
    DocumentVerification Before
)
{
    /// <summary>Reads a document.</summary>
    /// <param name="bytes">The bytes of the file.</param>
    /// <param name="document">The document.</param>
    /// <param name="why">Why it may not be signed, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> bytes,
        [NotNullWhen(true)] out Signable? document,
        [NotNullWhen(false)] out string? why
    )
    {
        document = null;
        return FirstRevision.TryRead(bytes, out var first, out why)
            && (
                IsDrawn(first)
                    ? TryReadDrawn(bytes, first, out document, out why)
                    : TryReadReport(bytes, first, out document, out why)
            );
    }

    /// <summary>What whoever signs should know: a lock that does not hold, and for the one who decides what the report concludes.</summary>
    public ImmutableArray<string> Remarks(Signatory signatory)
    {
        if (Subject.Analysis is not { } analysis)
        {
            return [];
        }

        var remarks = ImmutableArray.CreateBuilder<string>();
        if (analysis.Lock.Standing != LockStanding.BeforeFirstCollection)
        {
            remarks.Add(
                "Protocol: "
                    + ReportBuilder.LockSentence(analysis.Lock)
                    + " Verification of this report will fail in that part."
            );
        }

        if (analysis.Protocol.Decides(signatory))
        {
            remarks.AddRange(
                ReportBuilder.ConclusionLines(analysis).Select(line => "The report: " + line)
            );
            remarks.Add("Conditions can make a window shorter, never longer.");
        }

        return remarks.ToImmutable();
    }

    private static bool TryReadReport(
        ReadOnlyMemory<byte> bytes,
        FirstRevision first,
        [NotNullWhen(true)] out Signable? document,
        [NotNullWhen(false)] out string? why
    )
    {
        document = null;
        if (!AttachedStudy.TryRead(first, out var study, out why))
        {
            return false;
        }

        var recomputed = Recomputation.Of(study);
        why = WhyNot(recomputed, study);
        if (why is not null)
        {
            return false;
        }

        document = new Signable(
            SignedSubject.Of(recomputed.Recomputed!),
            study.Stated.ToolVersion,
            recomputed.MadeBy == Verification.MadeBy.ThisVersion
                ? []
                : ["the pages", .. recomputed.NotRecomputed],
            SignatureVerifier.Verify(bytes, VerificationOptions.WithoutTrust)
        );
        return true;
    }

    /// <summary>Whether a document is one whose pages are drawn from one attached file alone.</summary>
    public static bool IsDrawn(FirstRevision first) =>
        ProtocolDocumentFile.IsIn(first) || NoticeDocumentFile.IsIn(first);

    /// <summary>Reads such a document.</summary>
    public static bool TryReadDrawn(
        FirstRevision first,
        [NotNullWhen(true)] out IDrawnDocument? document,
        [NotNullWhen(false)] out string? why
    )
    {
        if (NoticeDocumentFile.IsIn(first))
        {
            var isNotice = NoticeDocumentFile.TryRead(first, out var notice, out why);
            document = notice;
            return isNotice;
        }

        var isProtocol = ProtocolDocumentFile.TryRead(first, out var protocol, out why);
        document = protocol;
        return isProtocol;
    }

    private static bool TryReadDrawn(
        ReadOnlyMemory<byte> bytes,
        FirstRevision first,
        [NotNullWhen(true)] out Signable? document,
        [NotNullWhen(false)] out string? why
    )
    {
        document = null;
        if (!TryReadDrawn(first, out var read, out why))
        {
            return false;
        }

        var before = SignatureVerifier.Verify(bytes, VerificationOptions.WithoutTrust);
        var pages = DrawnDocumentVerifier.Pages(read, before);
        var madeBy = DrawnDocumentVerifier.MadeBy(before) ?? ToolVersion.Current;
        if (
            pages.Outcome == PartOutcome.Fails
            || (
                pages.Outcome != PartOutcome.Holds
                && (before.Signatures.IsEmpty || ReleasedVersion.IsLater(madeBy))
            )
        )
        {
            why = pages.Sentences[0];
            return false;
        }

        document = new Signable(
            read.Subject,
            madeBy,
            pages.Outcome == PartOutcome.Holds ? [] : ["the pages"],
            before
        );
        return true;
    }

    /// <summary>Why a report is not one to be signed, whoever signs; null when it is.</summary>
    private static string? WhyNot(Recomputation recomputed, AttachedStudy study) =>
        recomputed switch
        {
            { MadeBy: Verification.MadeBy.LaterVersion } =>
                $"The report was made by version {study.Stated.ToolVersion}, which is later than this one, {ToolVersion.Current}. Sign it with that version or a later one.",
            { FiguresHold: false } => "The report does not follow from the inputs inside it: "
                + recomputed.Faults[0],
            { Pages: PagesOutcome.Differ } =>
                "The pages are not those that this program makes from the inputs inside the report. Make the report again.",
            { UnderOtherRules: [var first, ..] } =>
                $"The report was concluded under rules {study.Stated.Rules}, and under those of this version something comes out otherwise: {first} Make the report again.",
            _ => null,
        };
}

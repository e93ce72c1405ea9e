using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Signs reports. Only a report whose figures and pages follow from the inputs inside it is signed.</summary>
public static class ReportSigning
{
    /// <summary>Puts the next signature on a report.</summary>
    /// <param name="report">The bytes of the report.</param>
    /// <param name="key">Who signs.</param>
    /// <param name="order">As what, and what is decided.</param>
    /// <param name="timeStamp">Where a time stamp comes from; null for none.</param>
    public static SigningAttempt Sign(
        ReadOnlyMemory<byte> report,
        SigningKey key,
        SigningOrder order,
        TimeStampSource? timeStamp
    )
    {
        ArgumentNullException.ThrowIfNull(key);
        var attempt = Prepare(report, key.Certificate, order);
        return attempt is SigningAttempt.Prepared prepared
            ? prepared.With(PdfSigner.Sign(prepared.Document, key, timeStamp))
            : attempt;
    }

    /// <summary>Makes everything of the next signature but the signature itself, for a key that is elsewhere.</summary>
    /// <param name="report">The bytes of the report.</param>
    /// <param name="certificate">The certificate of that key.</param>
    /// <param name="order">Who signs as what, and what is decided.</param>
    public static SigningAttempt Prepare(
        ReadOnlyMemory<byte> report,
        CertificateFacts certificate,
        SigningOrder order
    )
    {
        ArgumentNullException.ThrowIfNull(order);
        return Prepare(
            report,
            certificate,
            order,
            (analysis, signatory) => DecisionOf(analysis, signatory, order)
        );
    }

    /// <summary>The same with the decision as it comes from the analysis.</summary>
    internal static SigningAttempt Prepare(
        ReadOnlyMemory<byte> report,
        CertificateFacts certificate,
        SigningOrder order,
        Func<StudyAnalysis, Signatory, (ApproverDecision? Decision, string? Why)> decide
    )
    {
        if (!AttachedStudy.TryRead(report, out var study, out var fault))
        {
            return new SigningAttempt.Refused(fault);
        }

        var recomputed = Recomputation.Of(study);
        if (WhyNotComputed(recomputed, study) is { } unfit)
        {
            return new SigningAttempt.Refused(unfit);
        }

        var analysis = recomputed.Recomputed!;
        var signatories = analysis.Protocol.Signatories;
        var index = signatories.Select(item => item.Role).ToList().IndexOf(order.Role);
        if (index < 0)
        {
            return new SigningAttempt.Refused(
                $"The protocol names no role \"{order.Role}\". Its roles: {string.Join(", ", signatories.Select(item => item.Role))}."
            );
        }

        var before = SignatureVerifier.Verify(report, VerificationOptions.WithoutTrust);
        ImmutableArray<string> accepted =
            recomputed.MadeBy == MadeBy.ThisVersion
                ? []
                : ["the pages", .. recomputed.NotRecomputed];
        if (
            (
                WhyNot(analysis, before, index, certificate, order)
                ?? WhyNotOver(study.Stated.ToolVersion, before, accepted, order)
            ) is
            { } why
        )
        {
            return new SigningAttempt.Refused(why);
        }

        var (decision, whyNot) = decide(analysis, signatories[index]);
        return whyNot is not null
            ? new SigningAttempt.Refused(whyNot)
            : Append(report, analysis, before, index, certificate, order, decision, accepted);
    }

    /// <summary>Why a report is not one to be signed, whoever signs; null when it is.</summary>
    private static string? WhyNotComputed(Recomputation recomputed, AttachedStudy study) =>
        recomputed switch
        {
            { MadeBy: MadeBy.LaterVersion } =>
                $"The report was made by version {study.Stated.ToolVersion}, which is later than this one, {ToolVersion.Current}. Sign it with that version or a later one.",
            { FiguresHold: false } => "The report does not follow from the inputs inside it: "
                + recomputed.Faults[0],
            { Pages: PagesOutcome.Differ } =>
                "The pages are not those that this program makes from the inputs inside the report. Make the report again.",
            { UnderOtherRules: [var first, ..] } =>
                $"The report was concluded under rules {study.Stated.Rules}, and under those of this version something comes out otherwise: {first} Make the report again.",
            _ => null,
        };

    /// <summary>A report of another version is signed only where somebody has signed it, and with what cannot be computed again accepted.</summary>
    private static string? WhyNotOver(
        string version,
        DocumentVerification before,
        ImmutableArray<string> accepted,
        SigningOrder order
    ) =>
        accepted.IsEmpty ? null
        : before.Signatures.IsEmpty
            ? $"The report was made by version {version}, and this is version {ToolVersion.Current}, which cannot check its pages. Make the report again."
        : order.AcceptsNotRecomputed ? null
        : $"The report was made by version {version}, and this is version {ToolVersion.Current}, which cannot compute again: {string.Join("; ", accepted)}. If you accept that, sign with --accept-not-recomputed; it becomes part of your signature.";

    private static string? WhyNot(
        StudyAnalysis analysis,
        DocumentVerification before,
        int index,
        CertificateFacts certificate,
        SigningOrder order
    )
    {
        if (before.Signatures.Any(item => item.Problems.Contains(SignatureProblem.NotSignedYet)))
        {
            return "The file was only prepared for a signature, which is not in it yet. Put the signature in with --complete, or take the report from which the file was prepared.";
        }

        var protocol = analysis.Protocol;
        var signatory = protocol.Signatories[index];
        var signed = before.Signatures.Select(item => item.FieldName).ToImmutableHashSet();
        if (signed.Contains(SignatoryFields.NameOf(index)))
        {
            return $"The {signatory.Role} has signed already.";
        }

        if (
            Enumerable
                .Range(0, index)
                .FirstOrDefault(earlier => !signed.Contains(SignatoryFields.NameOf(earlier)), -1)
            is >= 0
                and var missing
        )
        {
            return $"The {protocol.Signatories[missing].Role} signs before the {signatory.Role}.";
        }

        if (
            before.Signatures.FirstOrDefault(item =>
                item.Signer?.PublicKeySha256 == certificate.PublicKeySha256
            ) is
            { } same
        )
        {
            return $"This key has signed already ({same.Reason}). Another person signs as {signatory.Role}.";
        }

        if (SigningRules.LastResult(analysis) is { } last && order.At < last)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"The last result in the report was measured at {last:yyyy-MM-dd HH:mm zzz}, which is after the time of this computer's clock ({order.At:yyyy-MM-dd HH:mm zzz}). Correct the times in the files, or the clock."
            );
        }

        return null;
    }

    /// <summary>The decision on each row; or why it may not be signed.</summary>
    private static (ApproverDecision? Decision, string? Why) DecisionOf(
        StudyAnalysis analysis,
        Signatory signatory,
        SigningOrder order
    )
    {
        var (decision, why) =
            order.Decision is { } request && analysis.Protocol.Decides(signatory)
                ? DecisionMaking.Of(analysis, request, order.Earlier)
                : (null, null);
        if (why is not null)
        {
            return (null, why);
        }

        if (decision is null && order.Decision is not null)
        {
            return (null, SigningWords.Of(DecisionFault.NotTheirs, signatory));
        }

        var fault = DecisionFaults.Of(
            analysis,
            signatory,
            decision,
            SignedStatement.CurrentFormat,
            DateOnly.FromDateTime(order.At.DateTime)
        );
        return (decision, SigningWords.Of(fault, signatory));
    }

    private static SigningAttempt Append(
        ReadOnlyMemory<byte> report,
        StudyAnalysis analysis,
        DocumentVerification before,
        int index,
        CertificateFacts certificate,
        SigningOrder order,
        ApproverDecision? decision,
        ImmutableArray<string> accepted
    )
    {
        var protocol = analysis.Protocol;
        var signatory = protocol.Signatories[index];
        var digest = analysis.Identity.InputDigest;
        var name = order.Name ?? certificate.Name;
        var statement = new SignedStatement(
            signatory.Role,
            order.Credentials,
            decision,
            digest,
            ToolVersion.Current,
            accepted
        )
        {
            RecordSha256 = order.RecordSha256,
        };
        if (PdfSigner.PlaceOf(report, SignatoryFields.NameOf(index)) is not { } field)
        {
            return new SigningAttempt.Refused(
                $"The report has no place for the signature of the {signatory.Role}."
            );
        }

        var stamp = StampLines.Stamp(
            protocol,
            signatory,
            name,
            order.At,
            statement,
            certificate,
            field
        );
        if (accepted.IsEmpty && decision is not null && !stamp.FitsIn(field))
        {
            return new SigningAttempt.Refused(
                $"What is decided does not fit into the place on page 1 at a size that can be read: shorten reason and conditions by about {StampLines.LettersTooMany(stamp, field)} letters."
            );
        }

        var result = PdfSigner.Prepare(
            report,
            new SignatureContent(
                SignatoryFields.NameOf(index),
                order.At,
                name,
                SignatoryFields.MeaningOf(signatory),
                Location: null,
                statement.ToJson(),
                stamp
            ),
            certificate
        );
        if (!result.TryGet(out var document, out var refusal))
        {
            return new SigningAttempt.Refused(SigningWords.Of(refusal));
        }

        var signed = before
            .Signatures.Select(item => item.FieldName)
            .Append(SignatoryFields.NameOf(index))
            .ToImmutableHashSet();
        return new SigningAttempt.Prepared(
            document,
            new SigningAttempt.Done(
                document.Bytes,
                protocol.Code,
                digest,
                !before.Signatures.IsEmpty,
                Remarks(analysis, signatory),
                [
                    .. protocol
                        .Signatories.Where((_, i) => !signed.Contains(SignatoryFields.NameOf(i)))
                        .Select(item => item.Role),
                ]
            )
            {
                Role = signatory.Role,
                By =
                    name == certificate.Name
                        ? $"{name} ({signatory.Role})"
                        : $"{name} ({signatory.Role}; certificate of {certificate.Name})",
                Decision = decision is null ? null : DecisionWords.Whole(decision),
            }
        );
    }

    /// <summary>What whoever signs should know: a lock that does not hold, and for the one who decides what the report concludes.</summary>
    private static ImmutableArray<string> Remarks(StudyAnalysis analysis, Signatory signatory)
    {
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
}

using StabilityStudy.Core.Protocol;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>Signs reports, protocol documents and notices. Only one whose figures and pages follow from what is inside it is signed.</summary>
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
            (subject, signatory) => DecisionOf(subject, signatory, order)
        );
    }

    /// <summary>The same with the decision as it comes from what is signed.</summary>
    internal static SigningAttempt Prepare(
        ReadOnlyMemory<byte> report,
        CertificateFacts certificate,
        SigningOrder order,
        Func<SignedSubject, Signatory, (ApproverDecision? Decision, string? Why)> decide
    )
    {
        if (!Signable.TryRead(report, out var document, out var fault))
        {
            return new SigningAttempt.Refused(fault);
        }

        var signatories = document.Subject.Signatories;
        var index = signatories.Select(item => item.Role).ToList().IndexOf(order.Role);
        if (index < 0)
        {
            return new SigningAttempt.Refused(
                (
                    document.Subject.Kind switch
                    {
                        DocumentKind.Report => $"The protocol names no role \"{order.Role}\".",
                        DocumentKind.Protocol =>
                            $"Nobody signs the protocol document as \"{order.Role}\".",
                        DocumentKind.Notice => $"Nobody signs the notice as \"{order.Role}\".",
                    }
                ) + $" Its roles: {string.Join(", ", signatories.Select(item => item.Role))}."
            );
        }

        if ((WhyNot(document, index, certificate, order) ?? WhyNotOver(document, order)) is { } why)
        {
            return new SigningAttempt.Refused(why);
        }

        var (decision, whyNot) = decide(document.Subject, signatories[index]);
        return whyNot is not null
            ? new SigningAttempt.Refused(whyNot)
            : Append(report, document, index, certificate, order, decision);
    }

    /// <summary>A document of another version is signed only where somebody has signed it, and with what cannot be computed again accepted.</summary>
    private static string? WhyNotOver(Signable document, SigningOrder order) =>
        document.NotRecomputed.IsEmpty ? null
        : document.Before.Signatures.IsEmpty
            ? $"The report was made by version {document.MadeBy}, and this is version {ToolVersion.Current}, which cannot check its pages. Make the report again."
        : order.AcceptsNotRecomputed ? null
        : $"The report was made by version {document.MadeBy}, and this is version {ToolVersion.Current}, which cannot compute again: {string.Join("; ", document.NotRecomputed)}. If you accept that, sign with --accept-not-recomputed; it becomes part of your signature.";

    private static string? WhyNot(
        Signable document,
        int index,
        CertificateFacts certificate,
        SigningOrder order
    )
    {
        var before = document.Before;
        if (before.Signatures.Any(item => item.Problems.Contains(SignatureProblem.NotSignedYet)))
        {
            return "The file was only prepared for a signature, which is not in it yet. Put the signature in with --complete, or take the report from which the file was prepared.";
        }

        var signatories = document.Subject.Signatories;
        var signatory = signatories[index];
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
            return $"The {signatories[missing].Role} signs before the {signatory.Role}.";
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

        if (document.Subject.NamedSigner is { } named && named != (order.Name ?? certificate.Name))
        {
            return $"The notice names {named} as the one who decides and signs. Sign with that name (--name), or make the notice for who signs it.";
        }

        if (
            document.Subject.LaterThanSigned is { } day
            && day <= DateOnly.FromDateTime(order.At.DateTime)
        )
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"The day of the next review, {day:yyyy-MM-dd}, is not after today. Make the notice again with a later day."
            );
        }

        if (document.Subject.LastResult is { } last && order.At < last)
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
        SignedSubject subject,
        Signatory signatory,
        SigningOrder order
    )
    {
        if (subject.Analysis is not { } analysis)
        {
            return order.Decision is null
                ? (null, null)
                : (
                    null,
                    subject.Kind == DocumentKind.Notice
                        ? "A notice takes no decision: what is decided stands in it. Sign without --decision and what belongs to it."
                        : "A protocol document takes no decision: whoever signs it approves the limits and criteria as they stand. Sign without --decision and what belongs to it."
                );
        }

        var (decision, why) =
            order.Decision is { } request && analysis.Protocol.Decides(signatory)
                ? DecisionMaking.Of(
                    analysis,
                    WithReview(request, analysis.Protocol, order.At),
                    order.Earlier
                )
                : (null, null);
        if (why is not null)
        {
            return (null, why);
        }

        if (decision is null && order.Decision is not null)
        {
            return (null, SigningWords.Of(DecisionFault.NotTheirs, signatory));
        }

        var fault = subject.FaultOf(
            signatory,
            decision,
            SignedStatement.CurrentFormat,
            DateOnly.FromDateTime(order.At.DateTime)
        );
        return (decision, SigningWords.Of(fault, signatory));
    }

    /// <summary>The day of review follows from the protocol where the decision states none.</summary>
    private static DecisionRequest WithReview(
        DecisionRequest request,
        StudyProtocol protocol,
        DateTimeOffset at
    ) =>
        request is { Approves: true, Review: null } && protocol.ReviewAfter is { } after
            ? request with
            {
                Review = (request.Effective ?? DateOnly.FromDateTime(at.DateTime)).AddDays(
                    Math.Max(1, after.Days)
                ),
            }
            : request;

    private static SigningAttempt Append(
        ReadOnlyMemory<byte> report,
        Signable document,
        int index,
        CertificateFacts certificate,
        SigningOrder order,
        ApproverDecision? decision
    )
    {
        var subject = document.Subject;
        var accepted = document.NotRecomputed;
        var before = document.Before;
        var signatory = subject.Signatories[index];
        var digest = subject.Digest;
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
            subject.Analysis?.Protocol,
            signatory,
            name,
            order.At,
            statement,
            certificate,
            field,
            PdfSigner.AreasOf(report, SignatoryFields.NameOf(index))
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
        if (!result.TryGet(out var prepared, out var refusal))
        {
            return new SigningAttempt.Refused(SigningWords.Of(refusal));
        }

        var signed = before
            .Signatures.Select(item => item.FieldName)
            .Append(SignatoryFields.NameOf(index))
            .ToImmutableHashSet();
        return new SigningAttempt.Prepared(
            prepared,
            new SigningAttempt.Done(
                prepared.Bytes,
                subject.Name,
                digest,
                !before.Signatures.IsEmpty,
                document.Remarks(signatory),
                [
                    .. subject
                        .Signatories.Where((_, i) => !signed.Contains(SignatoryFields.NameOf(i)))
                        .Select(item => item.Role),
                ]
            )
            {
                Role = signatory.Role,
                Document = subject.Kind,
                By =
                    name == certificate.Name
                        ? $"{name} ({signatory.Role})"
                        : $"{name} ({signatory.Role}; certificate of {certificate.Name})",
                Decision = decision is null ? null : DecisionWords.Whole(decision),
            }
        );
    }
}

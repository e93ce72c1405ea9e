using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks a signature container against the bytes it covers and the time it claims.</summary>
internal static class ContainerCheck
{
    // Far above any chain of certificates with a time stamp.
    private const int LongestContents = 1024 * 1024;

    // A signer's clock may be ahead of the authority's by that much without anything being wrong.
    internal static readonly TimeSpan ClockDifference = TimeSpan.FromMinutes(5);

    public static ContainerFindings Check(
        ReadOnlyMemory<byte> contents,
        byte[] covered,
        DateTimeOffset? claimedTime,
        VerificationOptions options,
        DateTimeOffset? existedAt
    )
    {
        if (contents.Length > LongestContents)
        {
            return ContainerFindings.Refused(SignatureProblem.ContainerMalformed);
        }

        if (!contents.Span.ContainsAnyExcept((byte)0))
        {
            return ContainerFindings.Refused(SignatureProblem.NotSignedYet);
        }

        if (ContainerForm.Of(contents, out var problem) is not { } form)
        {
            return ContainerFindings.Refused(problem);
        }

        try
        {
            var container = new SignedCms(
                new ContentInfo(new Oid(ObjectIdentifiers.Data), covered),
                detached: true
            );
            container.Decode(contents.Span[..form.Length]);
            var findings = Check(container, form, covered, claimedTime, options, existedAt);
            if (contents.Span[form.Length..].ContainsAnyExcept((byte)0))
            {
                findings.Problems.Insert(0, SignatureProblem.PaddingNotZero);
            }

            return findings;
        }
        catch (Exception exception)
            when (exception is CryptographicException or AsnContentException)
        {
            // The library's only ways to say that something in the container has another form.
            return ContainerFindings.Refused(SignatureProblem.ContainerMalformed);
        }
    }

    private static ContainerFindings Check(
        SignedCms container,
        ContainerForm form,
        byte[] covered,
        DateTimeOffset? claimedTime,
        VerificationOptions options,
        DateTimeOffset? existedAt
    )
    {
        var signer = container.SignerInfos[0];
        // Libraries compare names without regard to case and kind of string.
        if (
            signer.Certificate is not { } certificate
            || !form.Issuer.Span.SequenceEqual(certificate.IssuerName.RawData)
            || !form.SerialNumber.Span.SequenceEqual(certificate.SerialNumberBytes.Span)
        )
        {
            return ContainerFindings.Refused(SignatureProblem.CertificateMissing);
        }

        var problems = new List<SignatureProblem>();
        problems.AddRange(SignedAttributes.Check(signer, certificate, covered));
        if (!CryptographicPolicy.AllowsIssue(certificate))
        {
            problems.Add(SignatureProblem.CertificateNotStrong);
        }

        if (!CryptographicPolicy.Allows(certificate.PublicKey))
        {
            problems.Add(SignatureProblem.KeyNotStrong);
        }
        else if (!problems.Contains(SignatureProblem.DigestMismatch) && !IsSigned(signer))
        {
            problems.Add(SignatureProblem.SignatureMismatch);
        }

        var stamp = TimeStampCheck.Check(signer, options, existedAt, out var wrong);
        if (wrong is { } problem)
        {
            problems.Add(problem);
        }

        if (
            claimedTime is { } claimed
            && (stamp?.Time < claimed - ClockDifference || existedAt < claimed - ClockDifference)
        )
        {
            problems.Add(SignatureProblem.TimeStampBeforeSigning);
        }

        var facts = CertificateFacts.Of(certificate);
        if (!facts.MaySign)
        {
            problems.Add(SignatureProblem.KeyUsageLacksSigning);
        }

        // An archive time stamp from after the certificate's end shows nothing about the time of signing.
        var archived = existedAt <= facts.NotAfter ? existedAt : null;
        var proven = archived < stamp?.ProvenTime ? archived : stamp?.ProvenTime ?? archived;
        ImmutableArray<DateTimeOffset> times =
        [
            .. claimedTime is { } said ? [said] : ImmutableArray<DateTimeOffset>.Empty,
            .. proven is { } shown ? [shown] : ImmutableArray<DateTimeOffset>.Empty,
        ];
        if (times.Any(time => time > options.Now + ClockDifference))
        {
            problems.Add(SignatureProblem.DatedInFuture);
        }

        if (times.Any(time => time < facts.NotBefore))
        {
            problems.Add(SignatureProblem.CertificateNotYetValid);
        }

        if (times.Any(time => time > facts.NotAfter))
        {
            problems.Add(SignatureProblem.CertificateExpired);
        }

        var chain = times.IsEmpty
            ? ChainVerification.NotChecked
            : CertificateChain.Verify(
                certificate,
                options.Beside(container.Certificates),
                options.Anchors,
                options.Revocation(times[^1], proven is not null),
                purpose: null
            );
        return new ContainerFindings(problems, facts, chain, stamp) { ExistedAt = archived };
    }

    private static bool IsSigned(SignerInfo signer)
    {
        try
        {
            signer.CheckSignature(verifySignatureOnly: true);
            return true;
        }
        catch (CryptographicException)
        {
            // The library's way to say no.
            return false;
        }
    }
}

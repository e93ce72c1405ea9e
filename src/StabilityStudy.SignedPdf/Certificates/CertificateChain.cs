using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Follows a certificate to a trust anchor (RFC 5280, section 6). Nothing is fetched from anywhere.</summary>
internal static class CertificateChain
{
    /// <param name="certificate">Where the chain begins.</param>
    /// <param name="others">Certificates that may lie on the way; nobody vouches for them.</param>
    /// <param name="anchors">Who is trusted; null when nobody said.</param>
    /// <param name="revocation">When the certificates must have been valid, and what is known of revoked ones.</param>
    /// <param name="purpose">Extended key usage that the certificate must have; null for signing documents.</param>
    public static ChainVerification Verify(
        X509Certificate2 certificate,
        X509Certificate2Collection others,
        TrustAnchors? anchors,
        RevocationCheck revocation,
        string? purpose
    )
    {
        if (anchors is null)
        {
            return ChainVerification.NotChecked;
        }

        using var chain = new X509Chain();
        var policy = chain.ChainPolicy;
        policy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        // Of one that is trusted itself the platform might take another anchor of the same name for its issuer.
        policy.CustomTrustStore.AddRange(
            anchors.Hold(certificate) ? [certificate] : anchors.Certificates.ToArray()
        );
        policy.ExtraStore.AddRange(others);
        policy.RevocationMode = X509RevocationMode.NoCheck;
        policy.DisableCertificateDownloads = true;
        policy.VerificationTime = revocation.Time.LocalDateTime;
        if (purpose is not null)
        {
            policy.ApplicationPolicy.Add(new Oid(purpose));
        }

        var isBuilt = chain.Build(certificate);
        var elements = chain.ChainElements.ToList();
        ImmutableArray<ChainFault> faults =
        [
            .. OfPlatform(chain, elements),
            .. elements.SelectMany(
                (element, i) =>
                    OfPolicy(element.Certificate, anchors, isIssuer: i > 0, purpose)
                        .Select(problem => new ChainFault(
                            problem,
                            CertificateFacts.Of(element.Certificate)
                        ))
            ),
        ];
        var isTrusted = isBuilt && faults.IsEmpty;
        var (outcome, revokedAt, missing) = isTrusted
            ? revocation.Of([.. elements.Select(static element => element.Certificate)])
            : (RevocationOutcome.NotChecked, null, []);
        return new ChainVerification(
            isTrusted ? ChainOutcome.Trusted : ChainOutcome.NotTrusted,
            outcome,
            revokedAt,
            [.. elements.Select(static element => CertificateFacts.Of(element.Certificate))],
            [.. faults.Distinct()],
            missing
        )
        {
            Elements =
            [
                .. elements.Select(static element => new X509Certificate2(element.Certificate)),
            ],
        };
    }

    /// <summary>What the platform found, with each certificate; what it gives to none belongs to the last.</summary>
    private static IEnumerable<ChainFault> OfPlatform(
        X509Chain chain,
        List<X509ChainElement> elements
    )
    {
        var ofElements = elements.SelectMany(static element =>
            element.ChainElementStatus.Select(status => (status.Status, element.Certificate))
        );
        var ofChain = chain.ChainStatus.Select(status => (status.Status, elements[^1].Certificate));
        return ofElements
            .Concat(ofChain)
            .DistinctBy(static item => item.Status)
            .Where(static item => ChainFault.Of(item.Status) is not null)
            .Select(static item => new ChainFault(
                ChainFault.Of(item.Status)!.Value,
                CertificateFacts.Of(item.Certificate)
            ));
    }

    /// <summary>What our own rules hold against a certificate. Nobody needs the signature of an anchor by itself.</summary>
    private static IEnumerable<ChainProblem> OfPolicy(
        X509Certificate2 certificate,
        TrustAnchors anchors,
        bool isIssuer,
        string? purpose
    )
    {
        if (!CryptographicPolicy.Allows(certificate.PublicKey))
        {
            yield return ChainProblem.KeyNotStrong;
        }

        if (anchors.Hold(certificate))
        {
            yield break;
        }

        if (SignatureMethod.Of(certificate) is null)
        {
            yield return ChainProblem.SignatureNotStrong;
        }

        // Of the signer itself that is asked without any chain.
        if (isIssuer && purpose is null && !CryptographicPolicy.AllowsDocuments(certificate))
        {
            yield return ChainProblem.ForOtherUses;
        }
    }
}

using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Follows a certificate to a trust anchor (RFC 5280, section 6). Nothing is fetched from anywhere.</summary>
internal static class CertificateChain
{
    /// <param name="certificate">Where the chain begins.</param>
    /// <param name="others">Certificates that may lie on the way; nobody vouches for them.</param>
    /// <param name="anchors">Who is trusted; null when nobody said.</param>
    /// <param name="lists">Revocation lists, of any issuers.</param>
    /// <param name="time">When the certificates must have been valid.</param>
    /// <param name="timeIsProven">A trusted time stamp proves the time, so that a revocation after it does not count.</param>
    /// <param name="purpose">Extended key usage that the certificate must have; null for any.</param>
    public static ChainVerification Verify(
        X509Certificate2 certificate,
        X509Certificate2Collection others,
        TrustAnchors? anchors,
        ImmutableArray<RevocationList> lists,
        DateTimeOffset time,
        bool timeIsProven,
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
        policy.CustomTrustStore.AddRange(anchors.Certificates.ToArray());
        policy.ExtraStore.AddRange(others);
        policy.RevocationMode = X509RevocationMode.NoCheck;
        policy.DisableCertificateDownloads = true;
        policy.VerificationTime = time.LocalDateTime;
        if (purpose is not null)
        {
            policy.ApplicationPolicy.Add(new System.Security.Cryptography.Oid(purpose));
        }

        var isTrusted = chain.Build(certificate);
        var elements = chain.ChainElements.Select(static element => element.Certificate).ToList();
        var (revocation, revokedAt) = isTrusted
            ? Revocation(elements, lists, time, timeIsProven)
            : (RevocationOutcome.NotChecked, null);
        return new ChainVerification(
            isTrusted ? ChainOutcome.Trusted : ChainOutcome.NotTrusted,
            revocation,
            revokedAt,
            [.. elements.Select(CertificateFacts.Of)],
            [
                .. chain
                    .ChainStatus.Select(static status => status.Status.ToString())
                    .Distinct(StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal),
            ]
        );
    }

    private static (RevocationOutcome Outcome, DateTimeOffset? At) Revocation(
        List<X509Certificate2> chain,
        ImmutableArray<RevocationList> lists,
        DateTimeOffset time,
        bool timeIsProven
    )
    {
        var isComplete = chain.Count > 1;
        for (var i = 0; i + 1 < chain.Count; i++)
        {
            var ofIssuer = lists.Where(list => list.IsBy(chain[i + 1])).ToList();
            foreach (var list in ofIssuer)
            {
                if (list.RevocationOf(chain[i]) is { } revoked && !(timeIsProven && revoked > time))
                {
                    return (RevocationOutcome.Revoked, revoked);
                }
            }

            isComplete &= ofIssuer.Exists(list => list.ThisUpdate >= time);
        }

        return (isComplete ? RevocationOutcome.NotRevoked : RevocationOutcome.NotChecked, null);
    }
}

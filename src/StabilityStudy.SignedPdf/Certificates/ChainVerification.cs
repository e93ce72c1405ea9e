using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What is known about the way from a certificate to somebody trusted.</summary>
/// <param name="Outcome">Trusted, not trusted or not checked.</param>
/// <param name="Revocation">What revocation lists say; not checked unless the chain is trusted.</param>
/// <param name="RevokedAt">When the revoked certificate was revoked; null when none was.</param>
/// <param name="Certificates">The chain from the certificate upwards as far as it was found.</param>
/// <param name="Faults">Why it is not trusted; empty when it is, or was not checked.</param>
/// <param name="RevocationFaults">Why nothing shows that no certificate was revoked; empty when something does, or the chain is not trusted.</param>
public sealed record ChainVerification(
    ChainOutcome Outcome,
    RevocationOutcome Revocation,
    DateTimeOffset? RevokedAt,
    ImmutableArray<CertificateFacts> Certificates,
    ImmutableArray<ChainFault> Faults,
    ImmutableArray<RevocationFault> RevocationFaults
)
{
    /// <summary>The chain from the certificate upwards as it was built, to be kept.</summary>
    internal ImmutableArray<X509Certificate2> Elements { get; init; } = [];

    internal static ChainVerification NotChecked { get; } =
        new(ChainOutcome.NotChecked, RevocationOutcome.NotChecked, null, [], [], []);
}

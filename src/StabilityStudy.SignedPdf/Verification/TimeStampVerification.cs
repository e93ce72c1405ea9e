using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>A time stamp whose signature is right; whether its authority is trusted, the chain says.</summary>
/// <param name="Time">The time it proves, if the authority is trusted.</param>
/// <param name="Authority">The certificate of the authority.</param>
/// <param name="Chain">The way to somebody trusted, at that time and for time stamping.</param>
public sealed record TimeStampVerification(
    DateTimeOffset Time,
    CertificateFacts Authority,
    ChainVerification Chain
)
{
    /// <summary>When it existed at the latest, as an archive time stamp proves; null where none does.</summary>
    public DateTimeOffset? ExistedAt { get; init; }

    /// <summary>The time, where its authority is trusted and was not revoked; null where it shows nothing.</summary>
    public DateTimeOffset? ProvenTime =>
        Chain is { Outcome: ChainOutcome.Trusted, Revocation: not RevocationOutcome.Revoked }
            ? Time
            : null;
}

using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What was found out from a signature container.</summary>
internal sealed record ContainerFindings(
    List<SignatureProblem> Problems,
    CertificateFacts? Signer,
    ChainVerification Chain,
    TimeStampVerification? TimeStamp
)
{
    /// <summary>When the signature existed at the latest, as its own or an archive time stamp proves.</summary>
    public DateTimeOffset? ProvenTime { get; init; }

    public static ContainerFindings Refused(SignatureProblem problem) =>
        new([problem], null, ChainVerification.NotChecked, null);
}

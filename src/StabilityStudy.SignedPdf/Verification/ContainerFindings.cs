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
    /// <summary>When the signature existed at the latest, as an archive time stamp proves that was made before its certificate ended; null where none does.</summary>
    public DateTimeOffset? ExistedAt { get; init; }

    public static ContainerFindings Refused(SignatureProblem problem) =>
        new([problem], null, ChainVerification.NotChecked, null);
}

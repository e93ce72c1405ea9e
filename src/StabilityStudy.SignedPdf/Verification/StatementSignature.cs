using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>A signature over a statement.</summary>
/// <param name="Problems">Everything that is wrong with it; empty when it is right.</param>
/// <param name="Signer">The certificate that signed; null when it was not found.</param>
/// <param name="Chain">The way from it to somebody trusted.</param>
public sealed record StatementSignature(
    ImmutableArray<SignatureProblem> Problems,
    CertificateFacts? Signer,
    ChainVerification Chain
)
{
    /// <summary>The signature is right. Whether the signer is trusted is another question.</summary>
    public bool Holds => Problems.IsEmpty;
}

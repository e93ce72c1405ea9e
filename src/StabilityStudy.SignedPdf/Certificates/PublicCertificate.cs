namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>The certificate of somebody whose key is elsewhere, such as on a card.</summary>
/// <param name="Facts">What it says.</param>
/// <param name="Pem">The certificate and those of its issuers that came with it, PEM.</param>
public sealed record PublicCertificate(CertificateFacts Facts, string Pem)
{
    /// <summary>Reads a certificate; null where there is none whose key is accepted.</summary>
    /// <param name="file">PEM, the certificate first and those of its issuers after it; or one certificate in DER.</param>
    /// <param name="problem">What is wrong when there is none.</param>
    public static PublicCertificate? Read(ReadOnlyMemory<byte> file, out SigningKeyProblem problem)
    {
        problem = SigningKeyProblem.NoCertificate;
        if (
            !TrustFile.Read(file).TryGet(out var read, out _)
            || read.Certificates is not [var first, ..]
        )
        {
            return null;
        }

        problem = SigningKeyProblem.KeyNotSupported;
        return CryptographicPolicy.Allows(first.PublicKey)
            ? new(
                CertificateFacts.Of(first),
                string.Concat(
                    read.Certificates.Select(static one => one.ExportCertificatePem() + "\n")
                )
            )
            : null;
    }
}

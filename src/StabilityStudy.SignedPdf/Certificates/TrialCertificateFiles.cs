namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A trial certificate with its private key, in the two usual forms; the key is protected by the passphrase in both.</summary>
/// <param name="Pkcs12">Key and certificate in one file.</param>
/// <param name="KeyPem">The private key.</param>
/// <param name="CertificatePem">The certificate, which others may see; as a trust store it makes signatures with the key trusted.</param>
public sealed record TrialCertificateFiles(
    ReadOnlyMemory<byte> Pkcs12,
    string KeyPem,
    string CertificatePem
);

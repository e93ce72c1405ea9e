using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>
/// Makes a certificate that its holder issues himself, for trial use: nobody vouches for the name in it, and verification says so.
/// </summary>
public static class TrialCertificate
{
    // Four times what NIST SP 800-132 calls the least, and still opened at once.
    private const int Iterations = 210_000;

    // RFC 5280, section 4.1.2.2: at most 20 bytes, and positive.
    private const int SerialLength = 16;

    /// <summary>A new key on the curve P-256 with its certificate. The key comes from the machine's cryptographic random source.</summary>
    /// <param name="name">Name of the holder.</param>
    /// <param name="organization">Where the holder works; null to say nothing.</param>
    /// <param name="notBefore">Valid from this moment on (whole seconds).</param>
    /// <param name="notAfter">Valid up to this moment; later than <paramref name="notBefore"/>.</param>
    /// <param name="passphrase">Protects the private key; not empty.</param>
    /// <param name="random">At least 16 bytes by chance, from which the serial number is made.</param>
    /// <exception cref="ArgumentException">Name or passphrase is empty, the dates are not in order, or the bytes are too few.</exception>
    public static TrialCertificateFiles Create(
        string name,
        string? organization,
        DateTimeOffset notBefore,
        DateTimeOffset notAfter,
        string passphrase,
        ReadOnlyMemory<byte> random
    )
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentException.ThrowIfNullOrEmpty(passphrase);
        if (notAfter <= notBefore)
        {
            throw new ArgumentException("The end is not after the start.", nameof(notAfter));
        }

        if (random.Length < SerialLength)
        {
            throw new ArgumentException("Too few random bytes.", nameof(random));
        }

        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = Issue(key, name, organization, notBefore, notAfter, random.Span);
        var protection = new PbeParameters(
            PbeEncryptionAlgorithm.Aes256Cbc,
            HashAlgorithmName.SHA256,
            Iterations
        );
        return new TrialCertificateFiles(
            Pkcs12(key, certificate, passphrase, protection),
            key.ExportEncryptedPkcs8PrivateKeyPem(passphrase, protection) + "\n",
            certificate.ExportCertificatePem() + "\n"
        );
    }

    private static X509Certificate2 Issue(
        ECDsa key,
        string name,
        string? organization,
        DateTimeOffset notBefore,
        DateTimeOffset notAfter,
        ReadOnlySpan<byte> random
    )
    {
        var subject = new X500DistinguishedNameBuilder();
        subject.AddCommonName(name);
        if (organization is not null)
        {
            subject.AddOrganizationName(organization);
        }

        var request = new CertificateRequest(subject.Build(), key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(
            new X509BasicConstraintsExtension(false, false, 0, critical: true)
        );
        request.CertificateExtensions.Add(
            new X509KeyUsageExtension(
                X509KeyUsageFlags.DigitalSignature | X509KeyUsageFlags.NonRepudiation,
                critical: true
            )
        );
        request.CertificateExtensions.Add(
            new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false)
        );
        var serial = random[..SerialLength].ToArray();

        // Positive, and without a leading zero byte.
        serial[0] = (byte)((serial[0] & 0x3F) | 0x40);
        return request.Create(
            request.SubjectName,
            X509SignatureGenerator.CreateForECDsa(key),
            notBefore,
            notAfter,
            serial
        );
    }

    private static byte[] Pkcs12(
        ECDsa key,
        X509Certificate2 certificate,
        string passphrase,
        PbeParameters protection
    )
    {
        var contents = new Pkcs12SafeContents();
        contents.AddCertificate(certificate);
        contents.AddShroudedKey(key, passphrase, protection);
        var builder = new Pkcs12Builder();
        builder.AddSafeContentsUnencrypted(contents);
        builder.SealWithMac(passphrase, HashAlgorithmName.SHA256, Iterations);
        return builder.Encode();
    }
}

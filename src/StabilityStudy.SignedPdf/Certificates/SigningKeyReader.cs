using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Reads a signing key from PKCS#12 or PEM. No key store of the machine is touched.</summary>
public static class SigningKeyReader
{
    private const int ShortestRsa = 2048;

    // P-256, P-384 and P-521 (RFC 5480, section 2.1.1.1).
    private static readonly string[] Curves =
    [
        "1.2.840.10045.3.1.7",
        "1.3.132.0.34",
        "1.3.132.0.35",
    ];

    /// <summary>The key with its certificate, or why there is none. Whether it may sign at a given time, <see cref="SigningKey.ProblemAt"/> says.</summary>
    /// <param name="keyFile">PKCS#12, or PEM with the private key.</param>
    /// <param name="certificateFile">PEM with the certificates, when they are in a file of their own; otherwise null.</param>
    /// <param name="passphrase">Opens the key; null for a key without protection.</param>
    public static SigningKeyResult Read(
        ReadOnlyMemory<byte> keyFile,
        ReadOnlyMemory<byte>? certificateFile,
        string? passphrase
    )
    {
        var parts = KeyParts.Empty;
        try
        {
            var problem = PemKeyFile.Looks(keyFile.Span)
                ? PemKeyFile.Add(parts, keyFile, passphrase)
                : Pkcs12KeyFile.Add(parts, keyFile, passphrase);
            if (problem is null && certificateFile is { } certificates)
            {
                problem = PemKeyFile.Looks(certificates.Span)
                    ? PemKeyFile.Add(parts, certificates, passphrase)
                    : SigningKeyProblem.Unreadable;
            }

            return problem is { } found ? new(found) : Fit(parts);
        }
        catch (CryptographicException)
        {
            // The library's only way to say that bytes are no certificate or key.
            return new(SigningKeyProblem.Unreadable);
        }
    }

    private static SigningKeyResult Fit(KeyParts parts)
    {
        if (parts.PrivateKeys is not [var first, ..])
        {
            return new(
                parts.Certificates.Count == 0
                    ? SigningKeyProblem.Unreadable
                    : SigningKeyProblem.NoPrivateKey
            );
        }

        if (parts.Certificates.Count == 0)
        {
            return new(SigningKeyProblem.NoCertificate);
        }

        if (Import(first) is not { } key)
        {
            return new(SigningKeyProblem.KeyNotSupported);
        }

        var publicKey = PublicKeyOf(key);
        var holder = parts.Certificates.Find(certificate =>
            publicKey.AsSpan().SequenceEqual(certificate.PublicKey.ExportSubjectPublicKeyInfo())
        );
        if (holder is null)
        {
            key.Dispose();
            return new(SigningKeyProblem.KeyDoesNotMatch);
        }

        return new(
            new SigningKey(
                holder,
                key,
                [.. parts.Certificates.Where(other => !ReferenceEquals(other, holder))]
            )
        );
    }

    private static AsymmetricAlgorithm? Import(Pkcs8PrivateKeyInfo info)
    {
        switch (info.AlgorithmId.Value)
        {
            case ObjectIdentifiers.Rsa:
                var rsa = RSA.Create();
                rsa.ImportPkcs8PrivateKey(info.Encode(), out _);
                return rsa.KeySize >= ShortestRsa ? rsa : null;
            case ObjectIdentifiers.EllipticCurve:
                var curve = ECDsa.Create();
                curve.ImportPkcs8PrivateKey(info.Encode(), out _);
                var parameters = curve.ExportParameters(includePrivateParameters: false);
                return
                    parameters.Curve is { IsNamed: true, Oid.Value: { } name }
                    && Curves.Contains(name, StringComparer.Ordinal)
                    ? curve
                    : null;
            default:
                return null;
        }
    }

    private static byte[] PublicKeyOf(AsymmetricAlgorithm key) => key.ExportSubjectPublicKeyInfo();
}

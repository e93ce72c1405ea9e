using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Reads a signing key from PKCS#12 or PEM. No key store of the machine is touched.</summary>
public static class SigningKeyReader
{
    /// <summary>The key with its certificate, or why there is none. Whether it may sign at a given time, <see cref="CertificateFacts.ProblemAt"/> says.</summary>
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
        AsymmetricAlgorithm? key = info.AlgorithmId.Value switch
        {
            ObjectIdentifiers.Rsa => RSA.Create(),
            ObjectIdentifiers.EllipticCurve => ECDsa.Create(),
            _ => null,
        };
        key?.ImportPkcs8PrivateKey(info.Encode(), out _);
        return key is not null && CryptographicPolicy.Allows(new PublicKey(key)) ? key : null;
    }

    private static byte[] PublicKeyOf(AsymmetricAlgorithm key) => key.ExportSubjectPublicKeyInfo();
}

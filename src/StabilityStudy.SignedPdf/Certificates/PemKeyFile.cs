using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Takes certificates and private keys out of PEM text (RFC 7468).</summary>
internal static class PemKeyFile
{
    public static bool Looks(ReadOnlySpan<byte> file) => file.IndexOf("-----BEGIN "u8) >= 0;

    /// <summary>Adds what is in the text; returns what is wrong with it, or null.</summary>
    public static SigningKeyProblem? Add(
        KeyParts parts,
        ReadOnlyMemory<byte> file,
        string? passphrase
    )
    {
        var text = Encoding.Latin1.GetString(file.Span);
        if (text.Contains("Proc-Type: 4,ENCRYPTED", StringComparison.Ordinal))
        {
            return SigningKeyProblem.KeyNotSupported;
        }

        var rest = text.AsSpan();
        while (PemEncoding.TryFind(rest, out var fields))
        {
            var label = rest[fields.Label];
            var bytes = Convert.FromBase64String(rest[fields.Base64Data].ToString());
            if (AddBlock(parts, label, bytes, passphrase) is { } problem)
            {
                return problem;
            }

            rest = rest[fields.Location.End..];
        }

        return null;
    }

    private static SigningKeyProblem? AddBlock(
        KeyParts parts,
        ReadOnlySpan<char> label,
        byte[] bytes,
        string? passphrase
    )
    {
        switch (label)
        {
            case "CERTIFICATE":
                parts.Certificates.Add(X509CertificateLoader.LoadCertificate(bytes));
                return null;
            case "PRIVATE KEY":
                parts.PrivateKeys.Add(Pkcs8PrivateKeyInfo.Decode(bytes, out _));
                return null;
            case "RSA PRIVATE KEY":
                using (var rsa = RSA.Create())
                {
                    rsa.ImportRSAPrivateKey(bytes, out _);
                    parts.PrivateKeys.Add(Pkcs8PrivateKeyInfo.Create(rsa));
                }

                return null;
            case "EC PRIVATE KEY":
                using (var curve = ECDsa.Create())
                {
                    curve.ImportECPrivateKey(bytes, out _);
                    parts.PrivateKeys.Add(Pkcs8PrivateKeyInfo.Create(curve));
                }

                return null;
            case "ENCRYPTED PRIVATE KEY":
                return EncryptedKey.Add(parts, bytes, passphrase);
            default:
                return null;
        }
    }
}

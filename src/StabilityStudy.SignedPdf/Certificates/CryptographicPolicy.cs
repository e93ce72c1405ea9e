using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>
/// Which keys, digests and uses of a certificate are accepted: the one rule for signatures in reports, locks, time stamps, revocation lists and every
/// certificate on the way to an anchor. Lengths and digests are those of NIST SP 800-131A revision 2 and ETSI TS 119 312.
/// </summary>
internal static class CryptographicPolicy
{
    private const int ShortestRsa = 2048;

    /// <summary>Any use (RFC 5280, section 4.2.1.12).</summary>
    private const string AnyUse = "2.5.29.37.0";

    // P-256, P-384 and P-521 by name (RFC 5480, section 2.1.1.1), encoded. A curve given by its numbers could have any base point.
    private static readonly HashSet<string> Curves = new(StringComparer.Ordinal)
    {
        "06082A8648CE3D030107",
        "06052B81040022",
        "06052B81040023",
    };

    private static readonly HashSet<string> SigningUses = new(StringComparer.Ordinal)
    {
        AnyUse,
        ObjectIdentifiers.EmailProtection,
        ObjectIdentifiers.DocumentSigning,
        ObjectIdentifiers.AdobeDocumentSigning,
        ObjectIdentifiers.MicrosoftDocumentSigning,
        ObjectIdentifiers.ClientAuthentication,
    };

    /// <summary>Whether signatures with the key can be relied on: RSA from 2,048 bits, or one of three named curves.</summary>
    public static bool Allows(PublicKey key)
    {
        switch (key.Oid.Value)
        {
            case ObjectIdentifiers.Rsa:
                using (var rsa = key.GetRSAPublicKey())
                {
                    // With the exponent 1 every text is its own signature.
                    return rsa?.KeySize >= ShortestRsa
                        && rsa.ExportParameters(includePrivateParameters: false).Exponent
                            is not [1];
                }

            case ObjectIdentifiers.EllipticCurve:
                return key.EncodedParameters is { } parameters
                    && Curves.Contains(Convert.ToHexString(parameters.RawData));
            default:
                return false;
        }
    }

    /// <summary>The digest of this name; null when it is not accepted, as MD5 and SHA-1.</summary>
    public static HashAlgorithmName? Digest(string? identifier) =>
        identifier switch
        {
            ObjectIdentifiers.Sha256 => HashAlgorithmName.SHA256,
            ObjectIdentifiers.Sha384 => HashAlgorithmName.SHA384,
            ObjectIdentifiers.Sha512 => HashAlgorithmName.SHA512,
            _ => null,
        };

    /// <summary>The hash by the digest of this name; null when the digest is not accepted.</summary>
    public static byte[]? Hash(string? identifier, ReadOnlySpan<byte> bytes) =>
        Digest(identifier) is { } digest ? CryptographicOperations.HashData(digest, bytes) : null;

    /// <summary>Whether a certificate was issued by a method that is accepted. One that issued itself is not asked: nobody relies on that signature, as it is an anchor or leads to none.</summary>
    public static bool AllowsIssue(X509Certificate2 certificate) =>
        CertificateFacts.IsOwnIssuer(certificate) || SignatureMethod.Of(certificate) is not null;

    /// <summary>Whether a method of signing may have this name; where the name leaves the digest open, <see cref="Digest"/> is asked besides.</summary>
    public static bool AllowsName(string? identifier) =>
        identifier
            is ObjectIdentifiers.Rsa
                or ObjectIdentifiers.RsaPss
                or ObjectIdentifiers.RsaWithSha256
                or ObjectIdentifiers.RsaWithSha384
                or ObjectIdentifiers.RsaWithSha512
                or ObjectIdentifiers.EcdsaWithSha256
                or ObjectIdentifiers.EcdsaWithSha384
                or ObjectIdentifiers.EcdsaWithSha512;

    /// <summary>Whether the key usage allows digital signatures or content commitment, or says nothing (RFC 5280, section 4.2.1.3).</summary>
    public static bool AllowsSignature(X509Certificate2 certificate)
    {
        const X509KeyUsageFlags signing =
            X509KeyUsageFlags.DigitalSignature | X509KeyUsageFlags.NonRepudiation;
        return certificate
            .Extensions.OfType<X509KeyUsageExtension>()
            .All(static usage => (usage.KeyUsages & signing) != X509KeyUsageFlags.None);
    }

    /// <summary>
    /// Whether the extended key usage lets a person sign documents, or says nothing. Issuers write very different ones into the certificates they give to people: for documents (RFC 9336,
    /// Adobe's, Microsoft's), for mail and, on cards of staff, for logging in; each of these names a person whose identity was looked at. One for web servers, programs or time stamps alone
    /// names no person, and is refused.
    /// </summary>
    public static bool AllowsDocuments(X509Certificate2 certificate) =>
        certificate
            .Extensions.OfType<X509EnhancedKeyUsageExtension>()
            .All(static extension =>
                extension
                    .EnhancedKeyUsages.Cast<Oid>()
                    .Any(static use => use.Value is { } name && SigningUses.Contains(name))
            );
}

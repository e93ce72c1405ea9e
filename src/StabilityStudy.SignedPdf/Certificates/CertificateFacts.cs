using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What a certificate says, whether or not anybody should believe it.</summary>
/// <param name="Name">The common name of its holder, or the whole subject when there is none.</param>
/// <param name="Subject">The whole subject (RFC 4514 text).</param>
/// <param name="Issuer">Who issued it (RFC 4514 text).</param>
/// <param name="SerialNumber">Serial number in hexadecimal digits.</param>
/// <param name="Sha256">SHA-256 of the certificate in hexadecimal digits.</param>
/// <param name="PublicKeySha256">SHA-256 of its public key (SubjectPublicKeyInfo) in hexadecimal digits: the same in every certificate for one key.</param>
/// <param name="NotBefore">Valid from this moment on.</param>
/// <param name="NotAfter">Valid up to this moment.</param>
/// <param name="IsSelfIssued">Subject and issuer are the same: the holder vouches for himself.</param>
/// <param name="MaySign">Its key usage and extended key usage let its holder sign documents, or say nothing.</param>
public sealed record CertificateFacts(
    string Name,
    string Subject,
    string Issuer,
    string SerialNumber,
    string Sha256,
    string PublicKeySha256,
    DateTimeOffset NotBefore,
    DateTimeOffset NotAfter,
    bool IsSelfIssued,
    bool MaySign
)
{
    /// <summary>Why the certificate does not allow signing at this moment; null when it does.</summary>
    public SigningKeyProblem? ProblemAt(DateTimeOffset time) =>
        !MaySign ? SigningKeyProblem.KeyUsageLacksSigning
        : time < NotBefore ? SigningKeyProblem.NotYetValid
        : time > NotAfter ? SigningKeyProblem.Expired
        : null;

    internal static CertificateFacts Of(X509Certificate2 certificate)
    {
        var name = certificate.GetNameInfo(X509NameType.SimpleName, forIssuer: false);
        return new CertificateFacts(
            name.Length > 0 ? name : certificate.Subject,
            certificate.Subject,
            certificate.Issuer,
            certificate.SerialNumber,
            certificate.GetCertHashString(HashAlgorithmName.SHA256),
            Convert.ToHexString(SHA256.HashData(PublicKey(certificate))),
            new DateTimeOffset(certificate.NotBefore.ToUniversalTime()),
            new DateTimeOffset(certificate.NotAfter.ToUniversalTime()),
            IsOwnIssuer(certificate),
            CryptographicPolicy.AllowsSignature(certificate)
                && CryptographicPolicy.AllowsDocuments(certificate)
        );
    }

    internal static bool IsOwnIssuer(X509Certificate2 certificate) =>
        certificate.SubjectName.RawData.AsSpan().SequenceEqual(certificate.IssuerName.RawData);

    /// <summary>The key written anew, since certificates may write one key in more than one way.</summary>
    private static byte[] PublicKey(X509Certificate2 certificate)
    {
        using var rsa = certificate.GetRSAPublicKey();
        using var curve = certificate.GetECDsaPublicKey();
        return rsa?.ExportSubjectPublicKeyInfo()
            ?? curve?.ExportSubjectPublicKeyInfo()
            ?? certificate.PublicKey.ExportSubjectPublicKeyInfo();
    }
}

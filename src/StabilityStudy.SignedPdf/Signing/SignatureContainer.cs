using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Makes the signature itself: CMS, detached, with the signing certificate named in it (RFC 5652, RFC 5035, ETSI EN 319 122-1).</summary>
internal static class SignatureContainer
{
    /// <summary>The signature over the content, in DER.</summary>
    public static byte[] Sign(byte[] content, SigningKey key)
    {
        var container = new SignedCms(
            new ContentInfo(new Oid(ObjectIdentifiers.Data), content),
            detached: true
        );
        var signer = new CmsSigner(
            SubjectIdentifierType.IssuerAndSerialNumber,
            key.Holder,
            key.PrivateKey
        )
        {
            DigestAlgorithm = new Oid(ObjectIdentifiers.Sha256),
            IncludeOption = X509IncludeOption.EndCertOnly,
        };
        signer.Certificates.AddRange(key.Others.ToArray());

        // No attribute for the time of signing: in a PDF it stands under /M (EN 319 142-1, clause 5.3).
        signer.SignedAttributes.Add(
            new AsnEncodedData(
                new Oid(ObjectIdentifiers.SigningCertificateV2),
                SigningCertificate(key.Holder)
            )
        );
        container.ComputeSignature(signer, silent: true);
        return container.Encode();
    }

    /// <summary>The container with a time stamp of its signature, in DER; or why there is none.</summary>
    /// <exception cref="CryptographicException">The bytes are no container.</exception>
    public static SigningResult<byte[]> Stamped(ReadOnlySpan<byte> bytes, TimeStampSource source)
    {
        var container = new SignedCms();
        container.Decode(bytes);
        var signer = container.SignerInfos[0];
        if (TimeStampToken.Over(signer, source, out var fault) is not { } token)
        {
            return fault is null
                ? new(
                    SigningRefusalReason.TimeStampUnavailable,
                    "The time stamp authority gave no answer."
                )
                : new(SigningRefusalReason.TimeStampInvalid, fault);
        }

        signer.AddUnsignedAttribute(
            new AsnEncodedData(new Oid(ObjectIdentifiers.TimeStampToken), token)
        );
        return new(container.Encode());
    }

    // The hash algorithm is left out because SHA-256 is the default (RFC 5035, section 4).
    private static byte[] SigningCertificate(X509Certificate2 certificate)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence())
        using (writer.PushSequence())
        {
            writer.WriteOctetString(certificate.GetCertHash(HashAlgorithmName.SHA256));
        }

        return writer.Encode();
    }
}

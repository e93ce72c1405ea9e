using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks what was signed together with the digest (RFC 5652, section 11; RFC 5035, section 3).</summary>
internal static class SignedAttributes
{
    /// <exception cref="AsnContentException">An attribute has another form.</exception>
    public static IEnumerable<SignatureProblem> Check(
        SignerInfo signer,
        X509Certificate2 certificate,
        ReadOnlySpan<byte> content
    )
    {
        var problems = new List<SignatureProblem>();
        if (CryptographicPolicy.Hash(signer.DigestAlgorithm.Value, content) is not { } digest)
        {
            return [SignatureProblem.AlgorithmNotSupported];
        }

        if (
            Single(signer, ObjectIdentifiers.ContentType) is not { } type
            || !string.Equals(
                AsnDecoder.ReadObjectIdentifier(type, AsnEncodingRules.DER, out _),
                ObjectIdentifiers.Data,
                StringComparison.Ordinal
            )
            || Single(signer, ObjectIdentifiers.MessageDigest) is not { } signed
        )
        {
            return [SignatureProblem.ContainerMalformed];
        }

        if (
            !AsnDecoder
                .ReadOctetString(signed, AsnEncodingRules.DER, out _)
                .AsSpan()
                .SequenceEqual(digest)
        )
        {
            problems.Add(SignatureProblem.DigestMismatch);
        }

        if (Single(signer, ObjectIdentifiers.SigningCertificateV2) is not { } named)
        {
            problems.Add(SignatureProblem.SigningCertificateMissing);
        }
        else if (!Names(named, certificate))
        {
            problems.Add(SignatureProblem.SigningCertificateMismatch);
        }

        return problems;
    }

    private static byte[]? Single(SignerInfo signer, string identifier)
    {
        var found = signer
            .SignedAttributes.Cast<CryptographicAttributeObject>()
            .Where(attribute =>
                string.Equals(attribute.Oid.Value, identifier, StringComparison.Ordinal)
            )
            .ToList();
        return found is [{ Values: { Count: 1 } values }] ? values[0].RawData : null;
    }

    private static bool Names(byte[] attribute, X509Certificate2 certificate)
    {
        // The first of the certificates named is the signer's.
        var first = new AsnReader(attribute, AsnEncodingRules.DER)
            .ReadSequence()
            .ReadSequence()
            .ReadSequence();
        var algorithm = first.PeekTag().HasSameClassAndValue(Asn1Tag.Sequence)
            ? first.ReadSequence().ReadObjectIdentifier()
            : ObjectIdentifiers.Sha256;
        return CryptographicPolicy.Hash(algorithm, certificate.RawData) is { } hash
            && first.ReadOctetString().AsSpan().SequenceEqual(hash);
    }
}

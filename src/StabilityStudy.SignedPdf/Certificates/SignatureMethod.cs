using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A method of signing that <see cref="CryptographicPolicy"/> accepts, as an encoded algorithm identifier names it (RFC 4055, RFC 5758).</summary>
/// <param name="Digest">The digest that is signed.</param>
/// <param name="Padding">How RSA pads it; null for curves.</param>
internal sealed record SignatureMethod(HashAlgorithmName Digest, RSASignaturePadding? Padding)
{
    private const string MaskGeneration = "1.2.840.113549.1.1.8";

    /// <summary>The method; null for one that is not known or not strong enough.</summary>
    public static SignatureMethod? Of(ReadOnlyMemory<byte> algorithm)
    {
        try
        {
            var reader = new AsnReader(algorithm, AsnEncodingRules.DER).ReadSequence();
            return reader.ReadObjectIdentifier() switch
            {
                ObjectIdentifiers.RsaWithSha256 => Plain(reader, HashAlgorithmName.SHA256),
                ObjectIdentifiers.RsaWithSha384 => Plain(reader, HashAlgorithmName.SHA384),
                ObjectIdentifiers.RsaWithSha512 => Plain(reader, HashAlgorithmName.SHA512),
                ObjectIdentifiers.EcdsaWithSha256 => Curve(reader, HashAlgorithmName.SHA256),
                ObjectIdentifiers.EcdsaWithSha384 => Curve(reader, HashAlgorithmName.SHA384),
                ObjectIdentifiers.EcdsaWithSha512 => Curve(reader, HashAlgorithmName.SHA512),
                ObjectIdentifiers.RsaPss => Pss(reader),
                _ => null,
            };
        }
        catch (AsnContentException)
        {
            return null;
        }
    }

    /// <summary>How the issuer signed the certificate; null for a method that is not known or not strong enough.</summary>
    public static SignatureMethod? Of(X509Certificate2 certificate)
    {
        var whole = new AsnReader(certificate.RawDataMemory, AsnEncodingRules.DER).ReadSequence();
        whole.ReadSequence();
        return Of(whole.PeekEncodedValue());
    }

    /// <summary>Whether the signature over the bytes was made with this method and key.</summary>
    public bool Verifies(PublicKey key, ReadOnlySpan<byte> signed, ReadOnlySpan<byte> signature)
    {
        if (Padding is { } padding)
        {
            using var rsa = key.GetRSAPublicKey();
            return rsa is not null && rsa.VerifyData(signed, signature, Digest, padding);
        }

        using var curve = key.GetECDsaPublicKey();
        return curve is not null
            && curve.VerifyData(signed, signature, Digest, DSASignatureFormat.Rfc3279DerSequence);
    }

    private static SignatureMethod? Plain(AsnReader algorithm, HashAlgorithmName digest)
    {
        SkipNull(algorithm);
        return algorithm.HasData ? null : new(digest, RSASignaturePadding.Pkcs1);
    }

    private static SignatureMethod? Curve(AsnReader algorithm, HashAlgorithmName digest) =>
        algorithm.HasData ? null : new(digest, null);

    // The digest twice and a salt of its length (RFC 4055, section 3.1): what every program writes that knows more than SHA-1.
    private static SignatureMethod? Pss(AsnReader algorithm)
    {
        var parameters = algorithm.ReadSequence();
        algorithm.ThrowIfNotEmpty();
        var digest = DigestIn(Field(parameters, 0));
        var mask = Field(parameters, 1).ReadSequence();
        var isMask = string.Equals(
            mask.ReadObjectIdentifier(),
            MaskGeneration,
            StringComparison.Ordinal
        );
        var maskDigest = DigestIn(mask);
        var salt = Field(parameters, 2).ReadInteger();
        return
            digest is { } name
            && isMask
            && maskDigest == name
            && salt == CryptographicOperations.HashData(name, (ReadOnlySpan<byte>)[]).Length
            && !parameters.HasData
            ? new(name, RSASignaturePadding.Pss)
            : null;
    }

    private static AsnReader Field(AsnReader parameters, int number) =>
        parameters.ReadSequence(new Asn1Tag(TagClass.ContextSpecific, number, isConstructed: true));

    private static HashAlgorithmName? DigestIn(AsnReader reader)
    {
        var algorithm = reader.ReadSequence();
        var name = algorithm.ReadObjectIdentifier();
        SkipNull(algorithm);
        return algorithm.HasData || reader.HasData ? null : CryptographicPolicy.Digest(name);
    }

    // Some writers put the null that RFC 4055, section 2.1, speaks of, some leave it out.
    private static void SkipNull(AsnReader algorithm)
    {
        if (algorithm.HasData)
        {
            algorithm.ReadNull();
        }
    }
}

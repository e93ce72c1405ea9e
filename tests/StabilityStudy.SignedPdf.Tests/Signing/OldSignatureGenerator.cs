using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>Signs certificates and lists with digests that the library itself no longer offers for that.</summary>
/// <param name="key">The key.</param>
/// <param name="digest">MD5 or SHA-1.</param>
internal sealed class OldSignatureGenerator(RSA key, HashAlgorithmName digest)
    : X509SignatureGenerator
{
    public override byte[] GetSignatureAlgorithmIdentifier(HashAlgorithmName hashAlgorithm)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        {
            // RFC 3279, section 2.2.1.
            writer.WriteObjectIdentifier(
                digest == HashAlgorithmName.MD5 ? "1.2.840.113549.1.1.4" : "1.2.840.113549.1.1.5"
            );
            writer.WriteNull();
        }

        return writer.Encode();
    }

    public override byte[] SignData(byte[] data, HashAlgorithmName hashAlgorithm) =>
        key.SignData(data, digest, RSASignaturePadding.Pkcs1);

    protected override PublicKey BuildPublicKey() => new(key);
}

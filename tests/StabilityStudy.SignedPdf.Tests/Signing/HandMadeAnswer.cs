using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>An answer about a certificate (RFC 6960, section 4.2.1) as anybody with a key can make it.</summary>
internal sealed record HandMadeAnswer(Signer About, DateTimeOffset ThisUpdate)
{
    private const string Sha1 = "1.3.14.3.2.26";
    private const string Sha256 = "2.16.840.1.101.3.4.2.1";

    public Signer Issuer { get; init; } = Signers.Authority;

    /// <summary>Who signs, if not the issuer.</summary>
    public Signer? Delegate { get; init; }

    public DateTimeOffset? RevokedAt { get; init; }

    public bool IsUnknown { get; init; }

    /// <summary>Names the issuer by SHA-256 instead of SHA-1.</summary>
    public bool HasNewNames { get; init; }

    /// <summary>Names who signs by key instead of by name.</summary>
    public bool NamesKey { get; init; }

    public HashAlgorithmName Digest { get; init; } = HashAlgorithmName.SHA256;

    /// <summary>How it is signed; null for PKCS#1 or a curve with the digest.</summary>
    public Func<AsymmetricAlgorithm, X509SignatureGenerator>? Method { get; init; }

    public bool HasCriticalExtension { get; init; }

    public RevocationStatement Read() =>
        Assert.Single(Rewritten.Value(TrustFile.Read(Encoded())).RevocationLists);

    public byte[] Encoded()
    {
        var by = Delegate ?? Issuer;
        var signed = Data(by);
        var generator =
            Method?.Invoke(by.Key)
            ?? (
                by.Key is RSA rsa
                    ? X509SignatureGenerator.CreateForRSA(rsa, RSASignaturePadding.Pkcs1)
                    : X509SignatureGenerator.CreateForECDsa((ECDsa)by.Key)
            );
        var basic = new AsnWriter(AsnEncodingRules.DER);
        using (basic.PushSequence())
        {
            basic.WriteEncodedValue(signed);
            basic.WriteEncodedValue(generator.GetSignatureAlgorithmIdentifier(Digest));
            basic.WriteBitString(generator.SignData(signed, Digest));
            if (Delegate is { } certified)
            {
                using (basic.PushSequence(new(TagClass.ContextSpecific, 0)))
                using (basic.PushSequence())
                {
                    basic.WriteEncodedValue(certified.Certificate.RawData);
                }
            }
        }

        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        {
            writer.WriteEnumeratedValue(Status.Successful);
            using (writer.PushSequence(new(TagClass.ContextSpecific, 0)))
            using (writer.PushSequence())
            {
                writer.WriteObjectIdentifier("1.3.6.1.5.5.7.48.1.1");
                writer.WriteOctetString(basic.Encode());
            }
        }

        return writer.Encode();
    }

    private byte[] Data(Signer by)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        {
            if (NamesKey)
            {
                using (writer.PushSequence(new(TagClass.ContextSpecific, 2)))
                {
                    writer.WriteOctetString(
                        CryptographicOperations.HashData(
                            HashAlgorithmName.SHA1,
                            by.Certificate.PublicKey.EncodedKeyValue.RawData
                        )
                    );
                }
            }
            else
            {
                using (writer.PushSequence(new(TagClass.ContextSpecific, 1)))
                {
                    writer.WriteEncodedValue(by.Certificate.SubjectName.RawData);
                }
            }

            writer.WriteGeneralizedTime(ThisUpdate, omitFractionalSeconds: true);
            using (writer.PushSequence())
            using (writer.PushSequence())
            {
                Single(writer);
            }
        }

        return writer.Encode();
    }

    private void Single(AsnWriter writer)
    {
        var hash = HasNewNames ? HashAlgorithmName.SHA256 : HashAlgorithmName.SHA1;
        using (writer.PushSequence())
        {
            using (writer.PushSequence())
            {
                writer.WriteObjectIdentifier(HasNewNames ? Sha256 : Sha1);
            }

            writer.WriteOctetString(
                CryptographicOperations.HashData(hash, Issuer.Certificate.SubjectName.RawData)
            );
            writer.WriteOctetString(
                CryptographicOperations.HashData(
                    hash,
                    Issuer.Certificate.PublicKey.EncodedKeyValue.RawData
                )
            );
            writer.WriteInteger(About.Certificate.SerialNumberBytes.Span);
        }

        if (RevokedAt is { } revoked)
        {
            using (writer.PushSequence(new(TagClass.ContextSpecific, 1)))
            {
                writer.WriteGeneralizedTime(revoked, omitFractionalSeconds: true);
            }
        }
        else
        {
            writer.WriteNull(new(TagClass.ContextSpecific, IsUnknown ? 2 : 0));
        }

        writer.WriteGeneralizedTime(ThisUpdate, omitFractionalSeconds: true);
        using (writer.PushSequence(new(TagClass.ContextSpecific, 0)))
        {
            writer.WriteGeneralizedTime(ThisUpdate.AddDays(30), omitFractionalSeconds: true);
        }

        if (HasCriticalExtension)
        {
            using (writer.PushSequence(new(TagClass.ContextSpecific, 1)))
            using (writer.PushSequence())
            using (writer.PushSequence())
            {
                writer.WriteObjectIdentifier("1.2.3.4");
                writer.WriteBoolean(true);
                writer.WriteOctetString([5, 0]);
            }
        }
    }

    private enum Status
    {
        Successful,
    }
}

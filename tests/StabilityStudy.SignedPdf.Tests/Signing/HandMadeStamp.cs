using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>A time stamp (RFC 3161, section 2.4.2) as anybody with a key can make it, of any time.</summary>
internal sealed record HandMadeStamp(DateTimeOffset Time)
{
    public const string TimeStamping = "1.3.6.1.5.5.7.3.8";
    private const string Sha256 = "2.16.840.1.101.3.4.2.1";
    private const string Sha1 = "1.3.14.3.2.26";

    public static Signer DefaultAuthority { get; } =
        new CertificateWish("Trial Time") { Purposes = [TimeStamping] }.Made();

    public Signer Authority { get; init; } = DefaultAuthority;

    public IReadOnlyList<X509Certificate2> Others { get; init; } = [];

    /// <summary>The digest of what is stamped is SHA-1.</summary>
    public bool HasOldImprint { get; init; }

    /// <summary>The authority signs with SHA-1.</summary>
    public bool HasOldDigest { get; init; }

    /// <summary>Puts the stamp on a signature.</summary>
    public void On(SignerInfo signer) =>
        signer.AddUnsignedAttribute(
            new AsnEncodedData(new Oid("1.2.840.113549.1.9.16.2.14"), Over(signer.GetSignature()))
        );

    /// <summary>Answers requests as an authority does.</summary>
    public TimeStampSource Source =>
        new(
            request =>
            {
                Assert.True(Rfc3161TimestampRequest.TryDecode(request, out var asked, out _));
                var writer = new AsnWriter(AsnEncodingRules.DER);
                using (writer.PushSequence())
                {
                    using (writer.PushSequence())
                    {
                        // Granted.
                        writer.WriteInteger(0);
                    }

                    writer.WriteEncodedValue(
                        Token(asked.GetMessageHash().ToArray(), asked.GetNonce())
                    );
                }

                return writer.Encode();
            },
            new byte[] { 0x7A, 2, 3, 4, 5, 6, 7, 8 }
        );

    /// <summary>The token over these bytes.</summary>
    public byte[] Over(byte[] stamped) =>
        Token(
            CryptographicOperations.HashData(
                HasOldImprint ? HashAlgorithmName.SHA1 : HashAlgorithmName.SHA256,
                stamped
            ),
            null
        );

    private byte[] Token(byte[] imprint, ReadOnlyMemory<byte>? nonce)
    {
        var container = new SignedCms(
            new ContentInfo(new Oid("1.2.840.113549.1.9.16.1.4"), Information(imprint, nonce))
        );
        var signer = new CmsSigner(
            SubjectIdentifierType.IssuerAndSerialNumber,
            Authority.Certificate,
            Authority.Key
        )
        {
            DigestAlgorithm = new Oid(HasOldDigest ? Sha1 : Sha256),
            IncludeOption = X509IncludeOption.EndCertOnly,
        };
        signer.Certificates.AddRange(Others.ToArray());
        signer.SignedAttributes.Add(Forgery.SigningCertificateAttribute(Authority.Certificate));
        container.ComputeSignature(signer, silent: true);
        return container.Encode();
    }

    private byte[] Information(byte[] imprint, ReadOnlyMemory<byte>? nonce)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        {
            writer.WriteInteger(1);
            writer.WriteObjectIdentifier("1.2.3.4.1");
            using (writer.PushSequence())
            {
                using (writer.PushSequence())
                {
                    writer.WriteObjectIdentifier(HasOldImprint ? Sha1 : Sha256);
                }

                writer.WriteOctetString(imprint);
            }

            writer.WriteInteger(7);
            writer.WriteGeneralizedTime(Time.ToUniversalTime(), omitFractionalSeconds: true);
            if (nonce is { } tied)
            {
                writer.WriteInteger(tied.Span);
            }
        }

        return writer.Encode();
    }
}

using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks the time stamp in a signature (RFC 3161).</summary>
internal static class TimeStampCheck
{
    /// <summary>The time stamp; no time stamp at all; or <paramref name="isInvalid"/> for one that is not right.</summary>
    public static TimeStampVerification? Check(
        SignerInfo signer,
        VerificationOptions options,
        out bool isInvalid
    )
    {
        var values = signer
            .UnsignedAttributes.Cast<CryptographicAttributeObject>()
            .Where(static attribute => attribute.Oid.Value is ObjectIdentifiers.TimeStampToken)
            .SelectMany(static attribute => attribute.Values.Cast<AsnEncodedData>())
            .ToList();
        isInvalid = values.Count > 0;
        if (
            values is not [var value]
            || !Rfc3161TimestampToken.TryDecode(value.RawData, out var token, out var length)
            || length != value.RawData.Length
            || !IsStrong(token.TokenInfo.HashAlgorithmId.Value)
            || !token.VerifySignatureForSignerInfo(signer, out var authority)
        )
        {
            return null;
        }

        isInvalid = false;
        return Found(token, authority, options);
    }

    /// <summary>What a token whose signature is right says, with the way from its authority to somebody trusted.</summary>
    public static TimeStampVerification Found(
        Rfc3161TimestampToken token,
        X509Certificate2 authority,
        VerificationOptions options
    ) =>
        new(
            token.TokenInfo.Timestamp,
            CertificateFacts.Of(authority),
            CertificateChain.Verify(
                authority,
                token.AsSignedCms().Certificates,
                options.Anchors,
                options.RevocationLists,
                token.TokenInfo.Timestamp,
                timeIsProven: false,
                ObjectIdentifiers.TimeStamping
            )
        );

    private static bool IsStrong(string? digest) =>
        digest is ObjectIdentifiers.Sha256 or ObjectIdentifiers.Sha384 or ObjectIdentifiers.Sha512;
}

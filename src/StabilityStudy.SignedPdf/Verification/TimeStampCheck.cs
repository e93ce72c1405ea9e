using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Checks the time stamp in a signature (RFC 3161).</summary>
internal static class TimeStampCheck
{
    /// <summary>The time stamp; none when the signature has none, or one that is not right.</summary>
    /// <param name="signer">The signature.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="existedAt">When the signature existed at the latest, as an archive time stamp proves; null where none does.</param>
    /// <param name="problem">What is wrong with the one that is there; null when nothing is.</param>
    public static TimeStampVerification? Check(
        SignerInfo signer,
        VerificationOptions options,
        DateTimeOffset? existedAt,
        out SignatureProblem? problem
    )
    {
        var values = signer
            .UnsignedAttributes.Cast<CryptographicAttributeObject>()
            .Where(static attribute => attribute.Oid.Value is ObjectIdentifiers.TimeStampToken)
            .SelectMany(static attribute => attribute.Values.Cast<AsnEncodedData>())
            .ToList();
        problem = values.Count > 0 ? SignatureProblem.TimeStampInvalid : null;
        return values is [var value]
            ? Read(
                value.RawData,
                token =>
                    token.VerifySignatureForSignerInfo(signer, out var authority)
                        ? authority
                        : null,
                options,
                existedAt,
                out problem
            )
            : null;
    }

    /// <summary>The time stamp in a token; null when it is not right.</summary>
    /// <param name="bytes">The token.</param>
    /// <param name="authorityOf">Who made it over the right bytes; null when nobody did.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="existedAt">When the token existed at the latest, as an archive time stamp proves; null where none does.</param>
    /// <param name="problem">What is wrong; null when nothing is.</param>
    public static TimeStampVerification? Read(
        ReadOnlyMemory<byte> bytes,
        Func<Rfc3161TimestampToken, X509Certificate2?> authorityOf,
        VerificationOptions options,
        DateTimeOffset? existedAt,
        out SignatureProblem? problem
    )
    {
        try
        {
            return Checked(bytes, authorityOf, options, existedAt, out problem);
        }
        catch (Exception exception)
            when (exception is CryptographicException or AsnContentException)
        {
            // The library's only ways to say that something in the token has another form.
            problem = SignatureProblem.TimeStampInvalid;
            return null;
        }
    }

    private static TimeStampVerification? Checked(
        ReadOnlyMemory<byte> bytes,
        Func<Rfc3161TimestampToken, X509Certificate2?> authorityOf,
        VerificationOptions options,
        DateTimeOffset? existedAt,
        out SignatureProblem? problem
    )
    {
        problem = SignatureProblem.TimeStampInvalid;
        if (
            !Rfc3161TimestampToken.TryDecode(bytes, out var token, out var length)
            || length != bytes.Length
            || authorityOf(token) is not { } authority
            || !CryptographicPolicy.AllowsSignature(authority)
        )
        {
            return null;
        }

        var container = token.AsSignedCms();
        if (!IsStrong(token, container.SignerInfos[0], authority))
        {
            problem = SignatureProblem.TimeStampNotStrong;
            return null;
        }

        problem = null;
        return new(
            token.TokenInfo.Timestamp,
            CertificateFacts.Of(authority),
            CertificateChain.Verify(
                authority,
                options.Beside(container.Certificates),
                options.TimeAnchors,
                options.OfTimeStamp(token.TokenInfo.Timestamp, existedAt),
                ObjectIdentifiers.TimeStamping
            )
        )
        {
            ExistedAt = existedAt,
        };
    }

    // The certificate of the authority may be named by SHA-1 (RFC 3161, section 2.4.2): that names it and signs nothing.
    private static bool IsStrong(
        Rfc3161TimestampToken token,
        SignerInfo signer,
        X509Certificate2 authority
    ) =>
        CryptographicPolicy.Digest(token.TokenInfo.HashAlgorithmId.Value) is not null
        && CryptographicPolicy.Digest(signer.DigestAlgorithm.Value) is not null
        && CryptographicPolicy.AllowsName(signer.SignatureAlgorithm.Value)
        && CryptographicPolicy.Allows(authority.PublicKey)
        && CryptographicPolicy.AllowsIssue(authority);
}

using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Verifies signatures and time stamps over bytes that stand in no PDF, such as a statement in a text file.</summary>
public static class StatementVerifier
{
    /// <summary>Who signed the bytes; null when the signature is of other bytes, wrong or damaged.</summary>
    /// <param name="statement">What was signed.</param>
    /// <param name="signature">CMS signature, detached, DER.</param>
    /// <param name="time">When the signer's certificate must have been valid.</param>
    /// <param name="options">Whom to trust.</param>
    public static StatementSignature? Signature(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> signature,
        DateTimeOffset time,
        VerificationOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        try
        {
            var container = new SignedCms(new ContentInfo(statement.ToArray()), detached: true);
            container.Decode(signature.Span);
            container.CheckSignature(verifySignatureOnly: true);
            return container.SignerInfos is [{ Certificate: { } certificate }]
                ? new StatementSignature(
                    CertificateFacts.Of(certificate),
                    CertificateChain.Verify(
                        certificate,
                        container.Certificates,
                        options.Anchors,
                        options.RevocationLists,
                        time,
                        timeIsProven: false,
                        purpose: null
                    )
                )
                : null;
        }
        catch (CryptographicException)
        {
            // The library's only way to say that a signature is wrong or damaged.
            return null;
        }
    }

    /// <summary>The time stamp over the bytes; null when the token is of other bytes or damaged.</summary>
    /// <param name="statement">What was stamped.</param>
    /// <param name="token">Time-stamp token (RFC 3161), DER.</param>
    /// <param name="options">Whom to trust.</param>
    public static TimeStampVerification? TimeStamp(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> token,
        VerificationOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        return
            Rfc3161TimestampToken.TryDecode(token, out var read, out var length)
            && length == token.Length
            && read.VerifySignatureForData(statement.Span, out var authority)
            ? TimeStampCheck.Found(read, authority, options)
            : null;
    }
}

/// <summary>A signature over a statement that is right.</summary>
/// <param name="Signer">The certificate that signed.</param>
/// <param name="Chain">The way from it to somebody trusted.</param>
public sealed record StatementSignature(CertificateFacts Signer, ChainVerification Chain);

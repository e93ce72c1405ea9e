using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Asks an authority for a time stamp (RFC 3161): the one place for stamps of signatures, of statements and of whole documents.</summary>
internal static class TimeStampToken
{
    /// <summary>A token over bytes, in DER; null where there is none.</summary>
    /// <param name="stamped">The bytes.</param>
    /// <param name="source">The authority.</param>
    /// <param name="fault">Why its answer cannot be used; null where there is a token, or it gave no answer.</param>
    public static byte[]? Over(
        ReadOnlySpan<byte> stamped,
        TimeStampSource source,
        out string? fault
    ) =>
        Ask(
            Rfc3161TimestampRequest.CreateFromData(
                stamped,
                HashAlgorithmName.SHA256,
                requestedPolicyId: null,
                source.Nonce,
                requestSignerCertificates: true
            ),
            source,
            out fault
        );

    /// <summary>The same over a signature.</summary>
    public static byte[]? Over(SignerInfo signer, TimeStampSource source, out string? fault) =>
        Ask(
            Rfc3161TimestampRequest.CreateFromSignerInfo(
                signer,
                HashAlgorithmName.SHA256,
                requestedPolicyId: null,
                source.Nonce,
                requestSignerCertificates: true
            ),
            source,
            out fault
        );

    private static byte[]? Ask(
        Rfc3161TimestampRequest request,
        TimeStampSource source,
        out string? fault
    )
    {
        fault = null;
        if (source.Ask(request.Encode()) is not { } response)
        {
            return null;
        }

        try
        {
            return request.ProcessResponse(response, out _).AsSignedCms().Encode();
        }
        catch (CryptographicException exception)
        {
            // The library's only way to say that a response is none, or belongs to another request.
            fault = exception.Message;
            return null;
        }
    }
}

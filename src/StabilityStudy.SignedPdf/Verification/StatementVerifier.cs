using System.Formats.Asn1;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Verifies signatures and time stamps over bytes that stand in no PDF, such as a statement in a text file.</summary>
public static class StatementVerifier
{
    /// <summary>Who signed the bytes, by the same rules as in a report.</summary>
    /// <param name="statement">What was signed.</param>
    /// <param name="signature">CMS signature, detached, DER.</param>
    /// <param name="time">When it was signed, as the statement claims.</param>
    /// <param name="options">Whom to trust.</param>
    public static StatementSignature Signature(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> signature,
        DateTimeOffset time,
        VerificationOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = IsWhole(signature.Span)
            ? ContainerCheck.Check(signature, statement.ToArray(), time, options, existedAt: null)
            : ContainerFindings.Refused(SignatureProblem.ContainerMalformed);
        return new([.. found.Problems.Distinct()], found.Signer, found.Chain);
    }

    /// <summary>The time stamp over the bytes; null when the token is of other bytes, damaged or not strong enough.</summary>
    /// <param name="statement">What was stamped.</param>
    /// <param name="token">Time-stamp token (RFC 3161), DER.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="problem">What is wrong when there is none; null otherwise.</param>
    public static TimeStampVerification? TimeStamp(
        ReadOnlyMemory<byte> statement,
        ReadOnlyMemory<byte> token,
        VerificationOptions options,
        out SignatureProblem? problem
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        return TimeStampCheck.Read(
            token,
            read =>
                read.VerifySignatureForData(statement.Span, out var authority) ? authority : null,
            options,
            existedAt: null,
            out problem
        );
    }

    /// <summary>In a PDF zeros fill the room of a signature; here nothing follows it.</summary>
    private static bool IsWhole(ReadOnlySpan<byte> signature) =>
        AsnDecoder.TryReadEncodedValue(
            signature,
            AsnEncodingRules.DER,
            out _,
            out _,
            out _,
            out var length
        )
        && length == signature.Length;
}

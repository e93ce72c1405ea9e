using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Signs and time-stamps bytes that stand in no PDF, such as a statement in a text file.</summary>
public static class StatementSigner
{
    /// <summary>A CMS signature over the bytes, detached, in DER, with the signing certificate named in it (RFC 5652, RFC 5035).</summary>
    public static ReadOnlyMemory<byte> Sign(ReadOnlyMemory<byte> statement, SigningKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return SignatureContainer.Sign(statement.ToArray(), key);
    }

    /// <summary>A time-stamp token over the bytes, in DER (RFC 3161); or why there is none.</summary>
    public static PdfResult<ReadOnlyMemory<byte>> Stamp(
        ReadOnlyMemory<byte> statement,
        TimeStampSource source
    )
    {
        ArgumentNullException.ThrowIfNull(source);
        return TimeStampToken.Over(statement.Span, source, out var fault) is { } token
            ? new(token)
            : new(new PdfFailure(null, fault ?? "The time-stamp authority gave no answer."));
    }
}

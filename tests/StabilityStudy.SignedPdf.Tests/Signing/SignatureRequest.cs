using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>One signature to be made with a key that is at hand.</summary>
internal sealed record SignatureRequest(
    string FieldName,
    SigningKey Key,
    DateTimeOffset SigningTime,
    string SignerName,
    string Reason,
    string? Location,
    string? Statement,
    SignatureStamp Stamp,
    TimeStampSource? TimeStamp
)
{
    public SignatureContent Content =>
        new(FieldName, SigningTime, SignerName, Reason, Location, Statement, Stamp);

    /// <summary>The signed document, or why it was not signed.</summary>
    public SigningResult<ReadOnlyMemory<byte>> Sign(ReadOnlyMemory<byte> document) =>
        PdfSigner
            .Prepare(document, Content, Key.Certificate)
            .TryGet(out var prepared, out var refusal)
            ? PdfSigner.Sign(prepared, Key, TimeStamp)
            : new(refusal);
}

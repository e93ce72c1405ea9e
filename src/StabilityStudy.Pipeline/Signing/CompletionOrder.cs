using StabilityStudy.Files.Recording;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A signature that was made elsewhere, to be put into a report that was prepared for it.</summary>
/// <param name="Report">The report as it is now.</param>
/// <param name="Prepared">What was prepared from it.</param>
/// <param name="Certificate">The certificate for which it was prepared.</param>
/// <param name="Answer">The signature: CMS, DER or PEM.</param>
/// <param name="At">When it is put in.</param>
/// <param name="TimeStamp">Where a time stamp comes from; null for none.</param>
public sealed record CompletionOrder(
    ReadOnlyMemory<byte> Report,
    ReadOnlyMemory<byte> Prepared,
    CertificateFacts Certificate,
    ReadOnlyMemory<byte> Answer,
    DateTimeOffset At,
    TimeStampSource? TimeStamp
)
{
    /// <summary>The decision that the record holds now; null without one.</summary>
    public RecordedDecision? Earlier { get; init; }
}

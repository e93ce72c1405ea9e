using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>One signature of a document. Name, reason, place, date and statement are what the signed bytes claim.</summary>
/// <param name="FieldName">The field it fills.</param>
/// <param name="Revision">Number of the revision it covers to the end, from 1; null when it covers none exactly.</param>
/// <param name="Problems">Everything that is wrong with it; empty when it is right.</param>
/// <param name="SignerName">Printed name of the signer; null when not said.</param>
/// <param name="Reason">What the signature means; null when not said.</param>
/// <param name="Location">Where it was made; null when not said.</param>
/// <param name="ClaimedTime">The date of signing by the signer's own clock; null when not said.</param>
/// <param name="Statement">Text signed along; null when there is none.</param>
/// <param name="Certifies">It is a certification that allows signing only.</param>
/// <param name="Signer">The certificate of the signer; null when it was not found.</param>
/// <param name="Chain">The way from that certificate to somebody trusted.</param>
/// <param name="TimeStamp">The time stamp; null when there is none, or none that is right.</param>
public sealed record SignatureVerification(
    string FieldName,
    int? Revision,
    ImmutableArray<SignatureProblem> Problems,
    string? SignerName,
    string? Reason,
    string? Location,
    DateTimeOffset? ClaimedTime,
    string? Statement,
    bool Certifies,
    CertificateFacts? Signer,
    ChainVerification Chain,
    TimeStampVerification? TimeStamp
)
{
    /// <summary>Where its field lies on the page; null for one without a place.</summary>
    public PageRectangle? Place { get; init; }

    /// <summary>When it existed at the latest, as an archive time stamp proves that was made before its certificate ended; null where none does.</summary>
    public DateTimeOffset? ExistedAt { get; init; }

    /// <summary>When it existed at the latest, as its own time stamp or an archive time stamp proves; null where none does.</summary>
    public DateTimeOffset? ProvenTime =>
        ExistedAt < TimeStamp?.ProvenTime ? ExistedAt : TimeStamp?.ProvenTime ?? ExistedAt;

    /// <summary>The signature is right. Whether the signer is trusted is another question.</summary>
    public bool Holds => Problems.IsEmpty;
}

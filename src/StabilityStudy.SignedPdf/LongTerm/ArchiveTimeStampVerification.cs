using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>An archive time stamp of a document.</summary>
/// <param name="FieldName">The field it fills.</param>
/// <param name="Revision">Number of the revision it covers to the end, from 1; null when it covers none exactly.</param>
/// <param name="Problems">Everything that is wrong with it; empty when it is right.</param>
/// <param name="TimeStamp">The time stamp; null when it is not right.</param>
public sealed record ArchiveTimeStampVerification(
    string FieldName,
    int? Revision,
    ImmutableArray<SignatureProblem> Problems,
    TimeStampVerification? TimeStamp
)
{
    /// <summary>The time stamp is right. Whether its authority is trusted is another question.</summary>
    public bool Holds => Problems.IsEmpty;
}

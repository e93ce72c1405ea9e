using StabilityStudy.SignedPdf.LongTerm;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Everything that was found out about the signatures of a document.</summary>
/// <param name="Failure">Why the file cannot be read; null when it can.</param>
/// <param name="Problems">What is wrong with the document as a whole.</param>
/// <param name="Signatures">The signatures in the order of the revisions they cover.</param>
/// <param name="Revisions">The revisions, oldest first.</param>
/// <param name="EmptyFields">Names of the fields that nobody has signed, in the order of the form. An expected signature may have been cut off together with its revision.</param>
public sealed record DocumentVerification(
    PdfFailure? Failure,
    ImmutableArray<DocumentProblem> Problems,
    ImmutableArray<SignatureVerification> Signatures,
    ImmutableArray<RevisionVerification> Revisions,
    ImmutableArray<string> EmptyFields
)
{
    /// <summary>The archive time stamps in the order of the revisions they cover.</summary>
    public ImmutableArray<ArchiveTimeStampVerification> ArchiveTimeStamps { get; init; } = [];

    /// <summary>
    /// There is at least one signature, every signature is right, and nothing but signing was done to the document. Says nothing about
    /// whether the signers are trusted, nor whether somebody has yet to sign.
    /// </summary>
    public bool Holds =>
        Problems.IsEmpty
        && !Signatures.IsEmpty
        && Signatures.All(static signature => signature.Holds)
        && ArchiveTimeStamps.All(static stamp => stamp.Holds)
        && Revisions.All(static revision => revision.Differences.IsEmpty);
}

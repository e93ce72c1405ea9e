namespace StabilityStudy.SignedPdf.Verification;

/// <summary>One revision compared with the one before.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="End">Length of the file up to its end, bytes.</param>
/// <param name="SignedField">The field whose signature or archive time stamp covers it to its end; null when there is none.</param>
/// <param name="BringsValidationData">It adds certificates and lists of revoked ones to the document.</param>
/// <param name="Differences">What was done besides filling that one field, or adding that data; empty for the first revision.</param>
public sealed record RevisionVerification(
    int Number,
    long End,
    string? SignedField,
    bool BringsValidationData,
    ImmutableArray<RevisionDifference> Differences
);

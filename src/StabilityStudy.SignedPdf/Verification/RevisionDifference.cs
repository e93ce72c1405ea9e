namespace StabilityStudy.SignedPdf.Verification;

/// <summary>One difference between two revisions that signing does not make.</summary>
/// <param name="Change">What happened.</param>
/// <param name="Part">To which part of the document it happened.</param>
/// <param name="Reference">The object; null for the trailer.</param>
/// <param name="Entry">The first entry that differs, when both are dictionaries; null otherwise.</param>
public sealed record RevisionDifference(
    RevisionChange Change,
    DocumentPart Part,
    PdfReference? Reference,
    string? Entry
);

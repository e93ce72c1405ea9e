namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Why a document was not signed, and what was found.</summary>
/// <param name="Reason">The kind of reason.</param>
/// <param name="What">What was found, in words.</param>
public sealed record SigningRefusal(SigningRefusalReason Reason, string What);

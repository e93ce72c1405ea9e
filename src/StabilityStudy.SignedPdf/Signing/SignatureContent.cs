using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>What a signature and its stamp say: everything in its revision but the signature itself, so that the revision can be made again.</summary>
/// <param name="FieldName">The field it fills.</param>
/// <param name="SigningTime">When, with the offset of the place.</param>
/// <param name="SignerName">Printed name of the signer.</param>
/// <param name="Reason">What the signature means.</param>
/// <param name="Location">Where it was made; null where that is not said.</param>
/// <param name="Statement">Text signed along; null for none.</param>
/// <param name="Stamp">What is shown on the page.</param>
public sealed record SignatureContent(
    string FieldName,
    DateTimeOffset SigningTime,
    string SignerName,
    string Reason,
    string? Location,
    string? Statement,
    SignatureStamp Stamp
);

using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>One signature to be made.</summary>
/// <param name="FieldName">The reserved field to fill.</param>
/// <param name="Key">Who signs.</param>
/// <param name="SigningTime">When, with the offset of the place; kept to the second.</param>
/// <param name="SignerName">Printed name of the signer.</param>
/// <param name="Reason">What the signature means.</param>
/// <param name="Location">Where it is made; null to say nothing.</param>
/// <param name="Statement">Text signed along, for a program to read, such as the approver's decision as JSON; null for none.</param>
/// <param name="Stamp">What is shown on the page.</param>
/// <param name="TimeStamp">Where a time stamp comes from; null for none.</param>
public sealed record SignatureRequest(
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
    /// <summary>What stands in the revision, but for the signature itself.</summary>
    internal SignatureContent Content =>
        new(FieldName, SigningTime, SignerName, Reason, Location, Statement, Stamp);
}

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

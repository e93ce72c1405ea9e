using StabilityStudy.Files.Recording;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>One signature to be put on a report.</summary>
/// <param name="Role">Role of the signatory, as the protocol names it.</param>
/// <param name="Key">Who signs.</param>
/// <param name="At">When, with the offset of the place.</param>
/// <param name="Name">Printed name; null to print the name in the certificate.</param>
/// <param name="Credentials">Credentials to print after the name; null for none.</param>
/// <param name="Decision">What is decided; needed from the signatory who decides, and from nobody else.</param>
/// <param name="TimeStamp">Where a time stamp comes from; null for none.</param>
public sealed record SigningOrder(
    string Role,
    SigningKey Key,
    DateTimeOffset At,
    string? Name,
    string? Credentials,
    DecisionRequest? Decision,
    TimeStampSource? TimeStamp
)
{
    /// <summary>Whether the signatory accepts what this version cannot compute again of a signed report of another version.</summary>
    public bool AcceptsNotRecomputed { get; init; }

    /// <summary>SHA-256 of the last line of the study's record; null where there is none.</summary>
    public string? RecordSha256 { get; init; }

    /// <summary>The decision that the record holds already; null without one.</summary>
    public RecordedDecision? Earlier { get; init; }
}

/// <summary>A signed report, or why it was not signed.</summary>
public abstract record SigningAttempt
{
    private SigningAttempt() { }

    /// <summary>The report with the new signature.</summary>
    /// <param name="Report">The bytes of the file.</param>
    /// <param name="StudyCode">Code of the study.</param>
    /// <param name="InputDigest">Digest of the study's inputs.</param>
    /// <param name="SignedBefore">Whether the report held a signature before.</param>
    /// <param name="Remarks">What whoever signs should know, whole sentences.</param>
    /// <param name="StillMissing">Roles that have yet to sign.</param>
    public sealed record Done(
        ReadOnlyMemory<byte> Report,
        string StudyCode,
        string InputDigest,
        bool SignedBefore,
        System.Collections.Immutable.ImmutableArray<string> Remarks,
        System.Collections.Immutable.ImmutableArray<string> StillMissing
    ) : SigningAttempt
    {
        /// <summary>What was decided, in words; null for a signatory who does not decide.</summary>
        public string? Decision { get; init; }
    }

    /// <summary>It was not signed; the file is as it was.</summary>
    /// <param name="Why">What stands in the way, in words.</param>
    public sealed record Refused(string Why) : SigningAttempt;
}

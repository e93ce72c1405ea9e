using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A signed report, one that is prepared for a signature, or why there is neither.</summary>
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
        ImmutableArray<string> Remarks,
        ImmutableArray<string> StillMissing
    ) : SigningAttempt
    {
        /// <summary>Role of the signatory.</summary>
        public required string Role { get; init; }

        /// <summary>What was signed. The digest of a protocol document or notice is the SHA-256 of the file that it carries.</summary>
        public DocumentKind Document { get; init; }

        /// <summary>Who signed, as the record of the study names people.</summary>
        public required string By { get; init; }

        /// <summary>What was decided, in words; null for a signatory who does not decide.</summary>
        public string? Decision { get; init; }
    }

    /// <summary>Every rule holds; what is missing is the signature.</summary>
    /// <param name="Document">The report with the place for the signature, and what is to be signed.</param>
    /// <param name="Afterwards">What will have been done once the signature is in its place.</param>
    public sealed record Prepared(PreparedDocument Document, Done Afterwards) : SigningAttempt
    {
        internal SigningAttempt With(SigningResult<ReadOnlyMemory<byte>> signed) =>
            signed.TryGet(out var report, out var refusal)
                ? Afterwards with
                {
                    Report = report,
                }
                : new Refused(SigningWords.Of(refusal));
    }

    /// <summary>It was not signed; the file is as it was.</summary>
    /// <param name="Why">What stands in the way, in words.</param>
    public sealed record Refused(string Why) : SigningAttempt;
}

using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>Verifies protocol documents by the rules for reports: signatures, revisions, and that the pages follow from the protocol inside.</summary>
internal static class ProtocolDocumentVerifier
{
    private const string Question = "Do the pages follow from the protocol in the file?";

    /// <summary>Verifies a protocol document by itself.</summary>
    /// <param name="pdf">The bytes of the file.</param>
    /// <param name="document">The document in it.</param>
    /// <param name="found">Its signatures and revisions.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="record">Content of record.jsonl of the study; null where it is not at hand.</param>
    public static ReportVerification Verify(
        ReadOnlyMemory<byte> pdf,
        ProtocolDocumentFile document,
        DocumentVerification found,
        VerificationOptions options,
        ReadOnlyMemory<byte>? record
    )
    {
        var signatures = Signatures(pdf, document, found, options);
        var additions = RevisionPart.Of(found);
        var lines = RecordComparison
            .Of(record, found.Signatures, LockEvidence.Of([], "", []), inputs: null, [])
            .ToImmutableArray();
        return new ReportVerification(
            document.Subject.Protocol.Code,
            document.ProtocolSha256,
            [],
            [
                signatures,
                additions,
                Pages(document, found),
                .. lines.IsEmpty
                    ? ImmutableArray<VerifiedPart>.Empty
                    : [VerifiedPart.Of("Is the study's record the one of then?", lines)],
            ]
        )
        {
            IsProtocol = true,
            Indication = ValidationIndication.Of(found, signatures.Outcome, additions.Outcome),
        };
    }

    /// <summary>Who signed, and whether the signatures hold.</summary>
    public static VerifiedPart Signatures(
        ReadOnlyMemory<byte> pdf,
        ProtocolDocumentFile document,
        DocumentVerification found,
        VerificationOptions options
    ) => SignaturePart.Of(pdf, found, document.Subject, MadeBy(found), options);

    /// <summary>Whether the pages are those that the program draws from the protocol.</summary>
    public static VerifiedPart Pages(ProtocolDocumentFile document, DocumentVerification found)
    {
        var (outcome, sentence) = document.IsDrawnAgain()
            ? (
                PartOutcome.Holds,
                document.Amends is { Amendment: var amendment }
                    ? $"The pages were drawn again and are the same, byte for byte; the list of {Counted.Of(amendment.Changes.Length, "change")} is what differs between the two protocols in the file."
                    : "The pages were drawn again and are the same, byte for byte."
            )
            : MadeBy(found) switch
            {
                null => (
                    PartOutcome.NotChecked,
                    "The pages are not those that this version draws from the protocol, and nobody has signed them: make the document again."
                ),
                var version when version == ToolVersion.Current => (
                    PartOutcome.Fails,
                    "The pages are not those that this program draws from the protocol."
                ),
                var version when ReleasedVersion.IsLater(version) => (
                    PartOutcome.NotChecked,
                    $"Pages not drawn again: the document was made by version {version}, which is later than this one, {ToolVersion.Current}. Use version {version} or a later one."
                ),
                var version when ReleasedVersion.TryFind(version, out _) => (
                    PartOutcome.NotChecked,
                    $"Pages not drawn again: the document was made by version {version}, and this is version {ToolVersion.Current}. Compare the limits and criteria on them with protocol.toml in the file."
                ),
                var version => (
                    PartOutcome.Fails,
                    $"The first signature says that version {version} made the document, which is no released version."
                ),
            };
        return new VerifiedPart(Question, outcome, [sentence]);
    }

    /// <summary>The version that made the document, as its first signature states it; null where nobody has signed.</summary>
    public static string? MadeBy(DocumentVerification found) =>
        found
            .Signatures.Select(signature =>
                SignedStatement.Read(signature.Statement)
                    is StatementReading.Read { Statement.ToolVersion: var version }
                    ? version
                    : null
            )
            .FirstOrDefault();
}

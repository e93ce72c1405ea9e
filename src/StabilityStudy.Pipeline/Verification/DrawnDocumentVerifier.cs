using StabilityStudy.Core.Locking;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>Verifies protocol documents and notices by the rules for reports: signatures, revisions, and that the pages follow from the file inside.</summary>
internal static class DrawnDocumentVerifier
{
    /// <summary>Who claims an earlier one would be spared the comparison of the pages.</summary>
    private static readonly Version s_firstWithNotices = new(0, 6, 0);

    /// <summary>Verifies a document by itself.</summary>
    /// <param name="pdf">The bytes of the file.</param>
    /// <param name="document">The document in it.</param>
    /// <param name="found">Its signatures and revisions.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="record">Content of record.jsonl of the study; null where it is not at hand.</param>
    public static ReportVerification Verify(
        ReadOnlyMemory<byte> pdf,
        IDrawnDocument document,
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
            document.Subject.Name,
            document.Subject.Digest,
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
            Document = document.Subject.Kind,
            LacksSignatures = found.Signatures.IsEmpty || !found.EmptyFields.IsEmpty,
            IsOfLaterVersion = MadeBy(found) is { } madeBy && ReleasedVersion.IsLater(madeBy),
            FirstSignedAt = found.Signatures.FirstOrDefault(item => item.Holds)?.ClaimedTime,
            Notice = (document as NoticeDocumentFile)?.Notice,
            Indication = ValidationIndication.Of(found, signatures.Outcome, additions.Outcome),
        };
    }

    /// <summary>Who signed, and whether the signatures hold.</summary>
    public static VerifiedPart Signatures(
        ReadOnlyMemory<byte> pdf,
        IDrawnDocument document,
        DocumentVerification found,
        VerificationOptions options
    ) => SignaturePart.Of(pdf, found, document.Subject, MadeBy(found), options);

    /// <summary>Whether the pages are those that the program draws from the attached file.</summary>
    public static VerifiedPart Pages(IDrawnDocument document, DocumentVerification found)
    {
        var (source, file) =
            document.Subject.Kind == DocumentKind.Notice
                ? ("the data of the notice", "notice.toml")
                : ("the protocol", "protocol.toml");
        var (outcome, sentence) = document.IsDrawnAgain()
            ? (
                PartOutcome.Holds,
                $"The pages were drawn again and are the same, byte for byte{document.AlsoDrawn}."
            )
            : MadeBy(found) switch
            {
                null => (
                    PartOutcome.NotChecked,
                    $"The pages are not those that this version draws from {source}, and nobody has signed them: make the document again."
                ),
                var version when version == ToolVersion.Current => (
                    PartOutcome.Fails,
                    $"The pages are not those that this program draws from {source}."
                ),
                var version when ReleasedVersion.IsLater(version) => (
                    PartOutcome.NotChecked,
                    $"Pages not drawn again: the document was made by version {version}, which is later than this one, {ToolVersion.Current}. Use version {version} or a later one."
                ),
                var version
                    when document.Subject.Kind == DocumentKind.Notice
                        && Version.TryParse(version, out var released)
                        && released < s_firstWithNotices => (
                    PartOutcome.Fails,
                    $"The first signature says that version {version} made the notice, which made none."
                ),
                var version when ReleasedVersion.TryFind(version, out _) => (
                    PartOutcome.NotChecked,
                    $"Pages not drawn again: the document was made by version {version}, and this is version {ToolVersion.Current}. Compare what stands on them with {file} in the file."
                ),
                var version => (
                    PartOutcome.Fails,
                    $"The first signature says that version {version} made the document, which is no released version."
                ),
            };
        return new VerifiedPart(
            $"Do the pages follow from {source} in the file?",
            outcome,
            [sentence]
        );
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

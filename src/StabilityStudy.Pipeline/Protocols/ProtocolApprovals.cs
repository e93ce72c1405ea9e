using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>Whether the protocol of a lock was approved by signature on its protocol document. Whether the signers are to be trusted, and whether the pages are the program's, verification asks.</summary>
internal static class ProtocolApprovals
{
    /// <summary>The lock with the approval that its protocol document shows, or contradicted by a document that is not right.</summary>
    public static ProtocolLock With(ProtocolLock item, StudyBytes files)
    {
        if (
            !files.Files.TryGetValue(
                LockedProtocols.StoredDocumentName(item.Number),
                out var document
            )
        )
        {
            return item;
        }

        var (approval, stated, fault) = Read(document, item.ProtocolSha256);
        return
            fault is null
            && Amendments.FaultOf(stated, item.Number, files) is not { Outcome: PartOutcome.Fails }
            ? item with
            {
                Approval = approval,
            }
            : item with
            {
                Level = LockLevel.Contradicted,
            };
    }

    /// <summary>The approval, null where not everybody has signed, and what the document amends. With a fault where the document is not right, or of another protocol.</summary>
    /// <param name="pdf">The bytes of the document.</param>
    /// <param name="protocolSha256">SHA-256 of the protocol that it should carry.</param>
    public static (ProtocolApproval? Approval, ProtocolAmendment? Stated, string? Fault) Read(
        ReadOnlyMemory<byte> pdf,
        string protocolSha256
    )
    {
        var found = SignatureVerifier.Verify(pdf, VerificationOptions.WithoutTrust);
        if (found.Failure is { } failure)
        {
            return (null, null, "The file cannot be read as a PDF: " + failure.What);
        }

        if (!ProtocolDocumentFile.TryRead(pdf, out var document, out var fault))
        {
            return (null, null, fault);
        }

        if (document.Subject.Digest != protocolSha256)
        {
            return (
                null,
                null,
                "The document carries another protocol than the one that is locked."
            );
        }

        var failed = new[]
        {
            DrawnDocumentVerifier.Signatures(
                pdf,
                document,
                found,
                VerificationOptions.WithoutTrust
            ),
            RevisionPart.Of(found),
        }.FirstOrDefault(part => part.Outcome == PartOutcome.Fails);
        var stated = document.Amends?.Amendment;
        return failed is not null ? (null, stated, failed.Sentences[0])
            : found.EmptyFields.IsEmpty ? (Approval(document, found), stated, null)
            : (null, stated, null);
    }

    private static ProtocolApproval? Approval(
        ProtocolDocumentFile document,
        DocumentVerification found
    )
    {
        var protocol = document.Protocol;
        var deciding = protocol
            .Signatories.Select((item, i) => (Item: item, Name: Signing.SignatoryFields.NameOf(i)))
            .Last(place => protocol.Decides(place.Item));
        return
            found.Signatures.FirstOrDefault(item => item.FieldName == deciding.Name)
                is { SignerName: { } name, ClaimedTime: { } at } signature
            ? new ProtocolApproval(deciding.Item.Role, name, at, signature.TimeStamp?.Time)
            : null;
    }
}

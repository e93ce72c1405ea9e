using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Evidence.Forging;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>The protocol document of the smallest example study, signed before its first collection, and forged ones.</summary>
internal static class ApprovedProtocol
{
    /// <summary>When the document is signed: before the lock.</summary>
    public static DateTimeOffset SignedAt { get; } = EvidenceExample.LockedAt.AddHours(-3);

    public static ReadOnlyMemory<byte> Bytes { get; } =
        EvidenceExample.Unlocked.Files[StudyBytes.ProtocolName];

    public static StudyProtocol Protocol
    {
        get
        {
            Assert.True(
                ProtocolReader.Read(Bytes, StudyBytes.ProtocolName).TryGet(out var protocol)
            );
            return protocol;
        }
    }

    private static readonly Lazy<ReadOnlyMemory<byte>> s_unsigned = new(() =>
        ProtocolDocumentFile.Render(Protocol, Bytes, PaperSize.A4).Pdf
    );

    private static readonly Lazy<ReadOnlyMemory<byte>> s_signedOnce = new(() =>
        Signed(s_unsigned.Value, "author", EvidenceExample.Author)
    );

    private static readonly Lazy<ReadOnlyMemory<byte>> s_signed = new(() =>
        Signed(s_signedOnce.Value, "approver", EvidenceExample.Director)
    );

    public static ReadOnlyMemory<byte> Unsigned => s_unsigned.Value;

    public static ReadOnlyMemory<byte> SignedOnce => s_signedOnce.Value;

    public static ReadOnlyMemory<byte> SignedTwice => s_signed.Value;

    /// <summary>The document of the protocol in a folder.</summary>
    public static ProtocolDrawing.Drawn Drawn(
        StudyBytes files,
        PaperSize paper = PaperSize.A4,
        string? reason = null
    ) =>
        Assert.IsType<ProtocolDrawing.Drawn>(
            StudyPipeline.RenderProtocol(
                files,
                paper,
                reason,
                DateOnly.FromDateTime(SignedAt.DateTime)
            )
        );

    public static ReadOnlyMemory<byte> Signed(
        ReadOnlyMemory<byte> document,
        string role,
        Signer signer,
        DateTimeOffset? at = null
    ) =>
        Assert
            .IsType<SigningAttempt.Done>(
                EvidenceExample.Sign(document, role, signer, decision: null, at ?? SignedAt)
            )
            .Report;

    /// <summary>The study, locked by a computer's clock, with a document beside its lock.</summary>
    public static StudyBytes StudyWith(ReadOnlyMemory<byte> document) =>
        EvidenceExample
            .Locked(EvidenceExample.Unlocked, EvidenceExample.LockedAt)
            .With(LockedProtocols.StoredDocumentName(1), document);

    /// <summary>A signature as the program would not make it, on a protocol document or notice.</summary>
    public static byte[] Forged(
        ReadOnlyMemory<byte> document,
        int index,
        Signer signer,
        Func<SignedStatement, SignedStatement>? stating = null,
        Func<SignatureContent, SignatureContent>? saying = null,
        DateTimeOffset? at = null
    )
    {
        Assert.True(FirstRevision.TryRead(document, out var first, out var unread), unread);
        Assert.True(Signable.TryReadDrawn(first, out var file, out var fault), fault);
        using var key = signer.Key();
        var signatory = file.Subject.Signatories[index];
        var field = SignatoryFields.NameOf(index);
        var statement = new SignedStatement(
            signatory.Role,
            null,
            null,
            file.Subject.Digest,
            ToolVersion.Current,
            []
        );
        statement = stating is null ? statement : stating(statement);
        var content = new SignatureContent(
            field,
            at ?? SignedAt,
            key.Certificate.Name,
            SignatoryFields.MeaningOf(signatory),
            null,
            statement.ToJson(),
            StampLines.Stamp(
                null,
                signatory,
                key.Certificate.Name,
                at ?? SignedAt,
                statement,
                key.Certificate,
                PdfSigner.PlaceOf(document, field)!,
                []
            )
        );
        return ForgedRevision.Sign(document, saying is null ? content : saying(content), signer);
    }

    /// <summary>A document whose pages show another protocol than the one that it carries.</summary>
    public static ReadOnlyMemory<byte> WithOtherPages() =>
        ProtocolDocumentFile
            .Render(
                Protocol with
                {
                    Groups = [.. Protocol.Groups.Select(item => item with { Specimens = 400 })],
                },
                Bytes,
                PaperSize.A4
            )
            .Pdf;
}

using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Notices;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.SignedPdf.Attachments;

namespace StabilityStudy.Pipeline.Notices;

/// <summary>A notice: pages made from notice.toml, which it carries as the only attached file.</summary>
/// <param name="First">The notice before anybody signed.</param>
/// <param name="Bytes">The data that it carries.</param>
/// <param name="Notice">What they say.</param>
internal sealed record NoticeDocumentFile(
    FirstRevision First,
    ReadOnlyMemory<byte> Bytes,
    Notice Notice
) : IDrawnDocument
{
    /// <summary>What is signed; its digest is the SHA-256 of the data.</summary>
    public SignedSubject Subject { get; } =
        new(
            DocumentKind.Notice,
            Notice.Study?.Code ?? Notice.Reports[0].Name,
            Signatories(Notice),
            InputDigest.Sha256(Bytes.Span)
        )
        {
            NamedSigner = Notice.By,
            LaterThanSigned = Notice.Review,
        };

    /// <summary>Nothing else.</summary>
    public string AlsoDrawn => "";

    /// <summary>Whether a document is a notice.</summary>
    public static bool IsIn(FirstRevision first) => first.Files.ContainsKey(NoticeToml.Name);

    /// <summary>Reads a notice.</summary>
    /// <param name="first">The document before anybody signed.</param>
    /// <param name="document">The notice.</param>
    /// <param name="fault">Why it is none, in words.</param>
    public static bool TryRead(
        FirstRevision first,
        [NotNullWhen(true)] out NoticeDocumentFile? document,
        [NotNullWhen(false)] out string? fault
    )
    {
        document = null;
        if (!IsIn(first) || first.Files.Count != 1)
        {
            fault = $"The file is no notice: it does not carry {NoticeToml.Name} alone.";
            return false;
        }

        var bytes = first.Files[NoticeToml.Name];
        var outcome = NoticeToml.Read(bytes);
        if (!outcome.TryGet(out var notice))
        {
            var stop = outcome.Queries[0];
            fault = $"The data of the notice cannot be read: {stop.Source}: {stop.Message}";
            return false;
        }

        document = new NoticeDocumentFile(first, bytes, notice);
        fault = null;
        return true;
    }

    /// <summary>A notice ready to be signed, or refused where its texts are none that it can carry.</summary>
    public static NoticeAttempt Drawn(Notice notice, PaperSize paper)
    {
        var read = NoticeToml.Read(NoticeToml.Write(notice));
        return read.TryGet(out _)
            ? new NoticeAttempt.Drawn(notice, Render(notice, paper).Pdf)
            : new NoticeAttempt.Refused(read.Queries[0].Message);
    }

    /// <summary>Draws a notice.</summary>
    public static RenderedReport Render(Notice notice, PaperSize paper)
    {
        var bytes = NoticeToml.Write(notice);
        var signatories = Signatories(notice);
        var model = NoticeDocument.Build(
            notice,
            signatories,
            InputDigest.Sha256(bytes.Span),
            paper
        );
        var drawn = PdfDrawing.Draw(model);
        return StudyPipeline.Finish(
            model,
            drawn,
            SignatoryFields.Of(drawn, signatories, _ => true),
            author: null,
            ToolVersion.Current,
            [
                new Attachment(
                    NoticeToml.Name,
                    "application/toml",
                    "The data of the notice",
                    AttachmentRelationship.Source,
                    bytes
                ),
            ]
        );
    }

    /// <summary>Whether this version draws the same notice, byte for byte; data that are written otherwise than the program writes them give other bytes.</summary>
    public bool IsDrawnAgain() =>
        new[] { PaperSize.A4, PaperSize.Letter }.Any(paper =>
            Render(Notice, paper).Pdf.Span.SequenceEqual(First.Bytes.Span)
        );

    private static ImmutableArray<Signatory> Signatories(Notice notice) =>
        [new Signatory(notice.Role, NoticeWords.Meaning(notice.Kind))];
}

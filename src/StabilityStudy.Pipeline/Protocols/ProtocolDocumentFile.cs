using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report.Protocol;
using StabilityStudy.SignedPdf.Attachments;

namespace StabilityStudy.Pipeline.Protocols;

/// <summary>A protocol document: pages made from a protocol, which it carries; that of an amendment carries what it states and the earlier protocol too.</summary>
/// <param name="First">The document before anybody signed.</param>
/// <param name="Bytes">The protocol that it carries.</param>
/// <param name="Protocol">The protocol, read, with those who sign this document.</param>
/// <param name="Amends">What it amends; null for a protocol that amends nothing.</param>
internal sealed record ProtocolDocumentFile(
    FirstRevision First,
    ReadOnlyMemory<byte> Bytes,
    StudyProtocol Protocol,
    AmendedProtocol? Amends
) : IDrawnDocument
{
    // Part of what is signed: a later version must still say the same.
    private const string Writes = "wrote this protocol and will run the study";
    private const string Approves = "approves the limits and criteria before collection";
    private const string WritesAmendment = "wrote this amendment and will run the study by it";
    private const string ApprovesAmendment = "approves the amended protocol";

    /// <summary>What is signed; its digest is the SHA-256 of the protocol.</summary>
    public SignedSubject Subject { get; } =
        new(
            DocumentKind.Protocol,
            Protocol.Code,
            Protocol.Signatories,
            InputDigest.Sha256(Bytes.Span)
        );

    /// <summary>That the list of changes of an amendment is the true one.</summary>
    public string AlsoDrawn =>
        Amends is { Amendment: var amendment }
            ? $"; the list of {Counted.Of(amendment.Changes.Length, "change")} is what differs between the two protocols in the file"
            : "";

    /// <summary>Whether a document is one of a protocol and no report.</summary>
    public static bool IsIn(FirstRevision first) =>
        first.Files.ContainsKey(StudyBytes.ProtocolName)
        && !first.Files.ContainsKey(AnalysisJson.FileName);

    /// <summary>Reads a protocol document.</summary>
    /// <param name="pdf">The bytes of the file.</param>
    /// <param name="document">The document.</param>
    /// <param name="fault">Why it is none, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> pdf,
        [NotNullWhen(true)] out ProtocolDocumentFile? document,
        [NotNullWhen(false)] out string? fault
    )
    {
        document = null;
        return FirstRevision.TryRead(pdf, out var first, out fault)
            && TryRead(first, out document, out fault);
    }

    /// <summary>The same from its first revision.</summary>
    public static bool TryRead(
        FirstRevision first,
        [NotNullWhen(true)] out ProtocolDocumentFile? document,
        [NotNullWhen(false)] out string? fault
    )
    {
        document = null;
        if (!IsIn(first))
        {
            fault =
                $"The file is no protocol document: it does not carry {StudyBytes.ProtocolName} alone.";
            return false;
        }

        if (!AmendedProtocol.TryRead(first, out var amends, out fault))
        {
            return false;
        }

        var bytes = first.Files[StudyBytes.ProtocolName];
        var outcome = ProtocolReader.Read(bytes, StudyBytes.ProtocolName);
        if (!outcome.TryGet(out var protocol))
        {
            var stop = outcome.Queries.First(query => query.Severity == Core.Queries.Severity.Stop);
            fault = $"The protocol in the file cannot be read: {stop.Source}: {stop.Message}";
            return false;
        }

        document = new ProtocolDocumentFile(
            first,
            bytes,
            WithItsSignatories(protocol, amends is not null),
            amends
        );
        fault = null;
        return true;
    }

    /// <summary>Draws the document of a protocol.</summary>
    /// <param name="protocol">The protocol, read from the bytes.</param>
    /// <param name="bytes">The content of protocol.toml.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="amends">What it amends; null for a protocol that amends nothing.</param>
    public static RenderedReport Render(
        StudyProtocol protocol,
        ReadOnlyMemory<byte> bytes,
        PaperSize paper,
        AmendedProtocol? amends = null
    ) => Render(StudyPlanner.Of(protocol, PlanRequest.Usual), bytes, paper, amends);

    private static RenderedReport Render(
        StudyPlan plan,
        ReadOnlyMemory<byte> bytes,
        PaperSize paper,
        AmendedProtocol? amends
    )
    {
        var signed = WithItsSignatories(plan.Protocol, amends is not null);
        var model = ProtocolDocument.Build(
            signed,
            plan,
            InputDigest.Sha256(bytes.Span),
            paper,
            amends?.Amendment
        );
        var drawn = PdfDrawing.Draw(model);
        return StudyPipeline.Finish(
            model,
            drawn,
            SignatoryFields.Of(drawn, signed.Signatories, signed.Decides),
            author: null,
            ToolVersion.Current,
            [
                new Attachment(
                    StudyBytes.ProtocolName,
                    "application/toml",
                    "The protocol",
                    AttachmentRelationship.Source,
                    bytes
                ),
                .. amends?.Attachments ?? [],
            ]
        );
    }

    /// <summary>Whether this version draws the same document, byte for byte.</summary>
    public bool IsDrawnAgain()
    {
        var plan = StudyPlanner.Of(Protocol, PlanRequest.Usual);
        return new[] { PaperSize.A4, PaperSize.Letter }.Any(paper =>
            Render(plan, Bytes, paper, Amends).Pdf.Span.SequenceEqual(First.Bytes.Span)
        );
    }

    /// <summary>The first signatory and whoever decides: they know the protocol before there are data.</summary>
    private static StudyProtocol WithItsSignatories(StudyProtocol protocol, bool isAmended) =>
        protocol with
        {
            Signatories =
            [
                .. protocol
                    .Signatories.Where((item, i) => i == 0 || protocol.Decides(item))
                    .Select(item =>
                        item with
                        {
                            Meaning = (protocol.Decides(item), isAmended) switch
                            {
                                (true, true) => ApprovesAmendment,
                                (true, false) => Approves,
                                (false, true) => WritesAmendment,
                                (false, false) => Writes,
                            },
                        }
                    ),
            ],
        };
}

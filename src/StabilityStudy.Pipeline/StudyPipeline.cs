using System.Buffers;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Rows;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Html;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Text;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Pipeline;

/// <summary>
/// The whole way of a study, bytes in and values out: read → queries → pairs → estimates → conclusions → report model →
/// PDF. It knows no file system, clock or console.
/// </summary>
public static class StudyPipeline
{
    /// <summary>Reads a study and lists its queries, without those that would give a result away.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static Outcome<StudyInputs> Check(StudyBytes files)
    {
        var intake = StudyIntake.Read(files);
        return intake.TryGet(out var study)
            ? Outcome.Conclude(
                study.Inputs,
                [
                    .. intake.Queries,
                    .. StudyChecks.Of(
                        study.Inputs,
                        study.Identity.HashOf(StudyBytes.ProtocolName) ?? ""
                    ),
                ]
            )
            : Outcome.Stopped<StudyInputs>(intake.Queries);
    }

    /// <summary>Reads and analyzes a study.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <returns>The analysis with every query, or the queries of which at least one stops.</returns>
    public static Outcome<AnalyzedStudy> Analyze(StudyBytes files) =>
        Analyze(files, keepsFiles: true);

    /// <summary>The same without the files that a report carries, which large data need not be held for.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static Outcome<AnalyzedStudy> AnalyzeFigures(StudyBytes files) =>
        Analyze(files, keepsFiles: false);

    private static Outcome<AnalyzedStudy> Analyze(StudyBytes files, bool keepsFiles)
    {
        if (EndedStudies.QueryOf(files) is { } ended)
        {
            return Outcome.Stopped<AnalyzedStudy>([ended]);
        }

        var intake = Read(files, keepsFiles);
        if (!intake.TryGet(out var read))
        {
            return Outcome.Stopped<AnalyzedStudy>(intake.Queries);
        }

        var (inputs, identity, sources) = read;
        if (!keepsFiles)
        {
            LargeData.Release(files.Files.Values.Sum(file => (long)file.Length));
        }

        var outcome = StudyAnalyzer.AnalyzeSound(
            inputs,
            identity,
            intake.Queries,
            ToolVersion.Current
        );
        return outcome.TryGet(out var analysis)
            ? Outcome.Of(new AnalyzedStudy(analysis, sources), analysis.Queries)
            : Outcome.Stopped<AnalyzedStudy>(outcome.Queries);
    }

    /// <summary>What is analyzed of a study. The files, as they came and in canonical form, are let go unless a report is to carry them.</summary>
    // Its result holds nothing else: a reading that is still in use somewhere would keep the files in memory.
    private static Outcome<ReadInputs> Read(StudyBytes files, bool keepsFiles)
    {
        var intake = StudyIntake.Read(files);
        return intake.TryGet(out var study)
            ? Outcome.Of(
                new ReadInputs(
                    LockSignatures.Checked(study.Inputs, files),
                    study.Identity,
                    keepsFiles ? AttachedFiles.Sources(files, study) : []
                ),
                intake.Queries
            )
            : Outcome.Stopped<ReadInputs>(intake.Queries);
    }

    /// <summary>What is analyzed of a study that was read.</summary>
    /// <param name="Inputs">The rows and what is stated of them.</param>
    /// <param name="Identity">The fingerprints of what was read.</param>
    /// <param name="Sources">The files that a report carries; empty for figures alone.</param>
    private sealed record ReadInputs(
        StudyInputs Inputs,
        StudyIdentity Identity,
        ImmutableArray<Attachment> Sources
    );

    /// <summary>The same study with how often studies like it would support each time point.</summary>
    /// <param name="study">The analyzed study.</param>
    /// <param name="studies">Simulated studies for each supposed change.</param>
    public static AnalyzedStudy WithPower(AnalyzedStudy study, int studies) =>
        study with
        {
            Analysis = study.Analysis with
            {
                Power = StudyPower.Of(study.Analysis, studies, FurtherEstimates.Seed),
            },
        };

    /// <summary>The digest of a study's inputs, without analyzing them; null when they cannot be read.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static string? InputDigestOf(StudyBytes files) =>
        StudyIntake.Read(files).TryGet(out var study) ? study.Identity.InputDigest : null;

    /// <summary>Makes the report.</summary>
    /// <param name="study">The analyzed study.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="full">Whether also what neither decides nor is asked for is shown.</param>
    /// <returns>The bytes of the PDF; the same for the same figures on any machine.</returns>
    /// <exception cref="InvalidOperationException">The drawn document could not be rewritten: a defect of this program.</exception>
    public static RenderedReport Render(AnalyzedStudy study, PaperSize paper, bool full = false) =>
        Render(study, paper, full, AnalysisJson.Write(study.Analysis));

    /// <summary>Makes the report with an analysis.json whose last digits may be those of another processor.</summary>
    internal static RenderedReport Render(
        AnalyzedStudy study,
        PaperSize paper,
        bool full,
        ReadOnlyMemory<byte> analysis
    )
    {
        var result = AttachedFiles.Result(analysis);
        var digest = Convert.ToHexStringLower(SHA256.HashData(result.Bytes.Span));

        // Sentences that name a page need the layout.
        var (model, drawn) = PdfDrawing.DrawSettled(known =>
            ReportBuilder.Build(study.Analysis, paper, known, digest, full)
        );
        return Finish(
            model,
            drawn,
            SignatoryFields.Of(
                drawn,
                study.Analysis.Protocol.Signatories,
                study.Analysis.Protocol.Decides
            ),
            study.Analysis.Facts.Facility,
            study.Analysis.ToolVersion,
            [.. study.Sources, result]
        );
    }

    /// <summary>Makes the document of a study's protocol, to be signed before collection; the data are not read.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="paper">Paper size.</param>
    /// <returns>The document, or the queries of the protocol of which at least one stops.</returns>
    /// <param name="reason">Why a locked protocol is amended; null where nobody says.</param>
    /// <param name="on">The day on which the document of an amendment is made.</param>
    public static ProtocolDrawing RenderProtocol(
        StudyBytes files,
        PaperSize paper,
        string? reason = null,
        DateOnly on = default
    )
    {
        var outcome = ReadProtocol(files);
        if (!outcome.TryGet(out var read))
        {
            return new ProtocolDrawing.Stopped(outcome.Queries);
        }

        if (!Amendments.TryMake(files, reason, on, out var amends, out var fault))
        {
            return new ProtocolDrawing.Refused(fault);
        }

        return new ProtocolDrawing.Drawn(
            ProtocolDocumentFile.Render(read.Protocol, read.Bytes, paper, amends),
            amends?.Amendment,
            outcome.Queries
        );
    }

    /// <summary>Plans a study from its protocol; the data are not read.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="request">What is asked; an analyte or group that the protocol does not have is the caller's mistake.</param>
    /// <param name="pilot">Content and name of a pilot file; null without one.</param>
    /// <returns>The plan with the queries of the protocol, or queries of which at least one stops.</returns>
    public static Outcome<StudyPlan> Plan(
        StudyBytes files,
        PlanRequest request,
        (ReadOnlyMemory<byte> Content, string Name)? pilot = null
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        var outcome = ReadProtocol(files);
        if (!outcome.TryGet(out var read))
        {
            return Outcome.Stopped<StudyPlan>(outcome.Queries);
        }

        if (pilot is not { } file)
        {
            return Outcome.Of(StudyPlanner.Of(read.Protocol, request), outcome.Queries);
        }

        var pairs = PilotReader.Read(file.Content, file.Name, read.Protocol);
        return pairs.TryGet(out var found)
            ? Outcome.Of(
                StudyPlanner.Of(read.Protocol, request with { Pilot = found.All }),
                outcome.Queries.AddRange(pairs.Queries)
            )
            : Outcome.Stopped<StudyPlan>(pairs.Queries);
    }

    /// <summary>The protocol of a study folder; the data are not read.</summary>
    /// <param name="files">The files of the study folder.</param>
    public static Outcome<StudyProtocol> ProtocolOf(StudyBytes files)
    {
        var outcome = ReadProtocol(files);
        return outcome.TryGet(out var read)
            ? Outcome.Of(read.Protocol, outcome.Queries)
            : Outcome.Stopped<StudyProtocol>(outcome.Queries);
    }

    /// <summary>The protocol of a study folder with its bytes.</summary>
    private static Outcome<StoredProtocol> ReadProtocol(StudyBytes files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (!files.Files.TryGetValue(StudyBytes.ProtocolName, out var bytes))
        {
            return Outcome.Stopped<StoredProtocol>([
                .. Check(files)
                    .Queries.Where(query => query.Source.File == StudyBytes.ProtocolName),
            ]);
        }

        var outcome = ProtocolReader.Read(bytes, StudyBytes.ProtocolName);
        return outcome.TryGet(out var protocol)
            ? Outcome.Of(new StoredProtocol(protocol, bytes), outcome.Queries)
            : Outcome.Stopped<StoredProtocol>(outcome.Queries);
    }

    /// <summary>A protocol and the bytes that it was read from.</summary>
    private sealed record StoredProtocol(StudyProtocol Protocol, ReadOnlyMemory<byte> Bytes);

    /// <summary>Draws a document with the files that it carries and the places of those who sign.</summary>
    // Compiled with optimization at once: what was drawn is then let go before it is rewritten.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static RenderedReport Finish(
        ReportModel model,
        DrawnReport drawn,
        ImmutableArray<ReservedField> fields,
        string? author,
        string toolVersion,
        ImmutableArray<Attachment> attachments
    )
    {
        var rewritten = DeterministicRewrite.Rewrite(
            drawn.Pdf,
            new RewriteOptions(
                model.Title,
                author,
                "stability-study " + toolVersion,
                model.Language,
                Date: null,
                attachments
            )
            {
                Fields = [.. fields, .. ArchiveFields.Reserved],
                ClaimsArchive = true,
            }
        );
        return rewritten.TryGet(out var pdf, out var failure)
            ? new RenderedReport(pdf, drawn.PageCount)
            : throw new InvalidOperationException(
                "The drawn document could not be rewritten: " + failure.What
            );
    }

    /// <summary>The report as plain text.</summary>
    /// <param name="study">The study.</param>
    /// <param name="width">Most characters in a line.</param>
    /// <param name="full">Whether all of it is shown, not only what is read at once.</param>
    public static string RenderText(AnalyzedStudy study, int width, bool full) =>
        full
            ? TextDrawing.Draw(WithoutPages(study, full: true), width)
            : TextDrawing.DrawBrief(WithoutPages(study), width);

    /// <summary>The whole report as one page of HTML.</summary>
    public static string RenderHtml(AnalyzedStudy study) =>
        HtmlDrawing.Draw(WithoutPages(study, full: true));

    /// <summary>Every figure of the report as an SVG file.</summary>
    public static ImmutableArray<FigureFile> RenderFigures(AnalyzedStudy study) =>
        FigureFiles.Of(WithoutPages(study));

    private static ReportModel WithoutPages(AnalyzedStudy study, bool full = false) =>
        ReportBuilder.Build(study.Analysis, PaperSize.A4, SectionPages.None, full: full);

    /// <summary>The conclusions and the criteria behind them as plain text.</summary>
    public static string Summarize(AnalyzedStudy study, int width) =>
        TextDrawing.Draw(ReportBuilder.BuildSummary(study.Analysis), width);

    /// <summary>How many specimens are there, and no figure of any change, as plain text.</summary>
    public static string SummarizeCounts(AnalyzedStudy study, int width) =>
        TextDrawing.Draw(ReportBuilder.BuildCounts(study.Analysis), width);

    /// <summary>When the last result of the study was measured; null without one.</summary>
    public static DateTimeOffset? LastResult(AnalyzedStudy study) =>
        SigningRules.LastResult(study.Analysis);

    /// <summary>The conclusions alone as plain text.</summary>
    public static string Headline(AnalyzedStudy study, int width) =>
        TextDrawing.Draw(ReportBuilder.BuildHeadline(study.Analysis), width);

    /// <summary>The content of analysis.json.</summary>
    public static ReadOnlyMemory<byte> WriteAnalysis(AnalyzedStudy study) =>
        AnalysisJson.Write(study.Analysis);

    /// <summary>Writes the same piece by piece.</summary>
    /// <param name="study">The study.</param>
    /// <param name="place">Where to.</param>
    public static void WriteAnalysis(AnalyzedStudy study, IBufferWriter<byte> place) =>
        AnalysisJson.Write(study.Analysis, place);
}

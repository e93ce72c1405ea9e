using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Reports as somebody makes them who has the program's code and wants other figures in them.</summary>
internal static class ForgedReport
{
    /// <summary>The example's report with other pages, other attached files, or both.</summary>
    public static ReadOnlyMemory<byte> Make(
        Func<StudyAnalysis, StudyAnalysis>? pages = null,
        Func<string, string, string>? attached = null
    )
    {
        Assert.True(AttachedStudy.TryRead(EvidenceExample.Unsigned, out var study, out _));
        var analysis = Recomputation.Of(study).Recomputed!;
        Assert.True(
            StudyIntake.ReadCanonical(study.Inputs, isOfOtherVersion: false).TryGet(out var inputs)
        );
        var files = AttachedFiles
            .Sources(study.Inputs, inputs)
            .Add(AttachedFiles.Result(study.AnalysisBytes))
            .Select(file => new Attachment(
                file.Name,
                file.MimeType,
                file.Description,
                file.Relationship,
                attached is null
                    ? file.Bytes
                    : Encoding.UTF8.GetBytes(
                        attached(file.Name, Encoding.UTF8.GetString(file.Bytes.Span))
                    )
            ));
        Attachment[] all = [.. files];
        return Draw(pages is null ? analysis : pages(analysis), all[^1].Bytes, [.. all]);
    }

    private static ReadOnlyMemory<byte> Draw(
        StudyAnalysis analysis,
        ReadOnlyMemory<byte> json,
        ImmutableArray<Attachment> files
    )
    {
        var digest = Convert.ToHexStringLower(SHA256.HashData(json.Span));
        var pages = PdfDrawing.PagesOf(
            ReportBuilder.Build(analysis, PaperSize.A4, pages: null, digest)
        );
        var model = ReportBuilder.Build(analysis, PaperSize.A4, pages, digest);
        Assert.True(
            SignatoryFields
                .Reserve(PdfDrawing.Draw(model), analysis.Protocol)
                .TryGet(out var drawn, out _)
        );
        Assert.True(
            DeterministicRewrite
                .Rewrite(
                    drawn,
                    new RewriteOptions(
                        model.Title,
                        analysis.Facts.Facility,
                        ToolVersion.Named,
                        model.Language,
                        null,
                        files
                    )
                )
                .TryGet(out var report, out _)
        );
        return report;
    }
}

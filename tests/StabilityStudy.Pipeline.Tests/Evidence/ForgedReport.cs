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
    private static readonly Lazy<(
        StudyAnalysis Analysis,
        ImmutableArray<Attachment> Files
    )> s_study = new(() =>
    {
        Assert.True(AttachedStudy.TryRead(EvidenceExample.Unsigned, out var study, out _));
        Assert.True(
            StudyIntake.ReadCanonical(study.Inputs, isOfOtherVersion: false).TryGet(out var inputs)
        );
        return (
            Recomputation.Of(study).Recomputed!,
            AttachedFiles
                .Sources(study.Inputs, inputs)
                .Add(AttachedFiles.Result(study.AnalysisBytes))
        );
    });

    /// <summary>The example's report with other pages, other attached files, or both.</summary>
    public static ReadOnlyMemory<byte> Make(
        Func<StudyAnalysis, StudyAnalysis>? pages = null,
        Func<string, string, string>? attached = null
    )
    {
        var files = Files(attached);
        var analysis = pages is null ? s_study.Value.Analysis : pages(s_study.Value.Analysis);
        var digest = Digest(files);
        var known = PdfDrawing.PagesOf(
            ReportBuilder.Build(analysis, PaperSize.A4, pages: null, digest)
        );
        return Draw(ReportBuilder.Build(analysis, PaperSize.A4, known, digest), analysis, files);
    }

    /// <summary>Other attached files behind the first page alone, for tests that look at no page.</summary>
    public static ReadOnlyMemory<byte> OnePage(Func<string, string, string> attached)
    {
        var (analysis, files) = (s_study.Value.Analysis, Files(attached));
        var model = ReportBuilder.Build(analysis, PaperSize.A4, pages: null, Digest(files));
        return Draw(model with { Sections = model.Sections[..1] }, analysis, files);
    }

    private static ImmutableArray<Attachment> Files(Func<string, string, string>? attached) =>
        [
            .. s_study.Value.Files.Select(file => new Attachment(
                file.Name,
                file.MimeType,
                file.Description,
                file.Relationship,
                attached is null
                    ? file.Bytes
                    : Encoding.UTF8.GetBytes(
                        attached(file.Name, Encoding.UTF8.GetString(file.Bytes.Span))
                    )
            )),
        ];

    // analysis.json is the last of the files.
    private static string Digest(ImmutableArray<Attachment> files) =>
        Convert.ToHexStringLower(SHA256.HashData(files[^1].Bytes.Span));

    private static ReadOnlyMemory<byte> Draw(
        ReportModel model,
        StudyAnalysis analysis,
        ImmutableArray<Attachment> files
    )
    {
        var drawn = PdfDrawing.Draw(model);
        Assert.True(
            DeterministicRewrite
                .Rewrite(
                    drawn.Pdf,
                    new RewriteOptions(
                        model.Title,
                        analysis.Facts.Facility,
                        ToolVersion.Named,
                        model.Language,
                        null,
                        files
                    )
                    {
                        Fields = SignatoryFields.Of(drawn, analysis.Protocol),
                    }
                )
                .TryGet(out var report, out _)
        );
        return report;
    }
}

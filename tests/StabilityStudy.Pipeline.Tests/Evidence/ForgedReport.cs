using System.Security.Cryptography;
using System.Text;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Proving;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Reports as somebody makes them who has the program's code and wants other figures in them.</summary>
internal static class ForgedReport
{
    private sealed record Parts(
        StudyAnalysis Analysis,
        ImmutableArray<Attachment> Files,
        int IntakeQueries
    );

    private static readonly Lazy<Parts> s_study = new(() => PartsOf(EvidenceExample.Unsigned));

    private static readonly Lazy<Parts> s_earlier = new(() =>
        PartsOf(ReleasedReports.Of(EarlierVersion), isOfOtherVersion: true)
    );

    /// <summary>The last released version whose analysis.json has form 2.</summary>
    public const string EarlierVersion = "0.5.0";

    /// <summary>How many data queries stand before those about the laboratory's own files.</summary>
    public static int IntakeQueries => s_study.Value.IntakeQueries;

    private static Parts PartsOf(ReadOnlyMemory<byte> report, bool isOfOtherVersion = false)
    {
        Assert.True(AttachedStudy.TryRead(report, out var study, out _));
        var intake = StudyIntake.ReadCanonical(study.Inputs, isOfOtherVersion);
        Assert.True(intake.TryGet(out var inputs));
        return new(
            Recomputation.Of(study).Recomputed!,
            AttachedFiles
                .Sources(study.Inputs, inputs)
                .Add(AttachedFiles.Result(study.AnalysisBytes)),
            intake.Queries.Length
        );
    }

    /// <summary>Another study's report with other attached files behind its first page.</summary>
    public static ReadOnlyMemory<byte> Of(StudyBytes files, Func<string, string, string> attached)
    {
        var parts = PartsOf(EvidenceExample.Report(files));
        return OnePage(parts.Analysis, Files(parts.Files, attached));
    }

    /// <summary>The same of a report of <see cref="EarlierVersion"/>.</summary>
    public static ReadOnlyMemory<byte> Earlier(Func<string, string, string> attached) =>
        OnePage(s_earlier.Value.Analysis, Files(s_earlier.Value.Files, attached));

    /// <summary>The first page of the example's report with other attached files.</summary>
    public static ReadOnlyMemory<byte> With(
        Func<ImmutableArray<Attachment>, ImmutableArray<Attachment>> change
    ) => OnePage(s_study.Value.Analysis, change(s_study.Value.Files));

    /// <summary>The example's report with another analysis, on its pages and in analysis.json alike.</summary>
    public static ReadOnlyMemory<byte> Consistent(Func<StudyAnalysis, StudyAnalysis> change) =>
        StudyPipeline
            .Render(
                new AnalyzedStudy(
                    change(s_study.Value.Analysis),
                    s_study.Value.Files.RemoveAt(s_study.Value.Files.Length - 1)
                ),
                PaperSize.A4
            )
            .Pdf;

    /// <summary>The example's report with other pages, other attached files, or both.</summary>
    public static ReadOnlyMemory<byte> Make(
        Func<StudyAnalysis, StudyAnalysis>? pages = null,
        Func<string, string, string>? attached = null
    )
    {
        var files = Files(s_study.Value.Files, attached);
        var analysis = pages is null ? s_study.Value.Analysis : pages(s_study.Value.Analysis);
        var digest = Digest(files);
        var (model, drawn) = PdfDrawing.DrawSettled(known =>
            ReportBuilder.Build(analysis, PaperSize.A4, known, digest)
        );
        return Written(model, drawn, analysis, files);
    }

    /// <summary>Other attached files behind the first page alone, for tests that look at no page.</summary>
    public static ReadOnlyMemory<byte> OnePage(Func<string, string, string> attached) =>
        OnePage(s_study.Value.Analysis, Files(s_study.Value.Files, attached));

    private static ReadOnlyMemory<byte> OnePage(
        StudyAnalysis analysis,
        ImmutableArray<Attachment> files
    )
    {
        var whole = ReportBuilder.Build(analysis, PaperSize.A4, pages: null, Digest(files));
        var model = whole with { Sections = whole.Sections[..1] };
        return Written(model, PdfDrawing.Draw(model), analysis, files);
    }

    private static ImmutableArray<Attachment> Files(
        ImmutableArray<Attachment> files,
        Func<string, string, string>? attached
    ) =>
        [
            .. files.Select(file => new Attachment(
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

    private static ReadOnlyMemory<byte> Written(
        ReportModel model,
        DrawnReport drawn,
        StudyAnalysis analysis,
        ImmutableArray<Attachment> files
    )
    {
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
                        Fields =
                        [
                            .. SignatoryFields.Of(
                                drawn,
                                analysis.Protocol.Signatories,
                                analysis.Protocol.Decides
                            ),
                            .. ArchiveFields.Reserved,
                        ],
                        ClaimsArchive = true,
                    }
                )
                .TryGet(out var report, out _)
        );
        return report;
    }
}

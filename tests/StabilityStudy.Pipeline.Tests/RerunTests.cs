using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>A report can be recomputed from the PDF alone.</summary>
[Trait("lane", "slow")]
public sealed class RerunTests
{
    private const double RelativeTolerance = 1e-9;

    private static readonly AnalyzedStudy s_example = ExampleStudy.Analyzed;

    private static readonly Lazy<StudyBytes> s_attached = new(() =>
        Attached(StudyPipeline.Render(s_example, PaperSize.Letter).Pdf)
    );

    [Fact]
    public void The_attachments_of_the_PDF_give_the_same_analysis_again()
    {
        var files = s_attached.Value;

        var again = Analyze(files);

        Assert.Empty(
            JsonDifferences.Of(
                files.Files["analysis.json"],
                AnalysisJson.Write(again),
                RelativeTolerance,
                "rawFiles"
            )
        );
        Assert.Equal(s_example.Analysis.Identity.InputDigest, again.Identity.InputDigest);
        Assert.Equal(
            ConclusionText.WithFigures(s_example.Analysis),
            ConclusionText.WithFigures(again)
        );
    }

    [Fact]
    public void A_changed_attachment_gives_another_digest()
    {
        var files = s_attached.Value.Edited(ExampleStudy.Results, ",32.4,s,", ",32.5,s,");

        var again = Analyze(files);

        Assert.NotEqual(s_example.Analysis.Identity.InputDigest, again.Identity.InputDigest);
        Assert.NotEmpty(
            JsonDifferences.Of(
                files.Files["analysis.json"],
                AnalysisJson.Write(again),
                RelativeTolerance,
                "identity"
            )
        );
    }

    private static StudyBytes Attached(ReadOnlyMemory<byte> pdf)
    {
        Assert.True(
            PdfDocumentReader.Read(pdf).TryGet(out var document, out var failure),
            failure?.What
        );
        Assert.True(
            EmbeddedFiles.Extract(document).TryGet(out var files, out failure),
            failure?.What
        );
        return StudyBytes.Of(files.Select(file => KeyValuePair.Create(file.Name, file.Bytes)));
    }

    private static StudyAnalysis Analyze(StudyBytes files)
    {
        var intake = StudyIntake.ReadCanonical(files, isOfOtherVersion: false);
        Assert.True(intake.TryGet(out var study), string.Join('\n', intake.Queries));
        return StudyAnalyzer.Analyze(
            study.Inputs,
            study.Identity,
            intake.Queries,
            ToolVersion.Current
        );
    }
}

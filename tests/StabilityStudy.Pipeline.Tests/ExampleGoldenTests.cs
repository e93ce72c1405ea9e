using System.Security.Cryptography;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>What a user of the example gets, under the cultures that break formatting most often.</summary>
[Trait("lane", "slow")]
public sealed class ExampleGoldenTests
{
    private const string Golden = "tests/StabilityStudy.Pipeline.Tests/Golden/";

    private static readonly Lazy<string> s_pdf = new(PdfHash);

    public static TheoryData<string> Cultures => ["", "de-DE", "tr-TR"];

    [Fact]
    public void The_conclusions_and_their_figures_are_those_of_the_golden_file() =>
        RequireSame("conclusions.txt", ConclusionText.WithFigures(ExampleStudy.Analyzed.Analysis));

    [Fact]
    public void The_queries_are_those_of_the_golden_file() =>
        RequireSame(
            "queries.txt",
            string.Concat(
                ExampleStudy.Analyzed.Analysis.Queries.Select(query =>
                    $"{query.Severity} {query.Source} [{query.Code}]\n  read: {query.Observed}\n  {query.Message}\n  {query.Action}\n"
                )
            )
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void The_summary_is_that_of_the_golden_file(string culture) =>
        RequireSame(
            "summary.txt",
            Under(
                culture,
                () => StudyPipeline.Summarize(ExampleStudy.Analyze(ExampleStudy.Bytes), 80)
            )
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void The_text_report_is_that_of_the_golden_file(string culture) =>
        RequireSame(
            "report.txt",
            Under(
                culture,
                () =>
                    StudyPipeline.RenderText(ExampleStudy.Analyze(ShortStudy.Bytes), 80, full: true)
            )
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void The_brief_text_is_that_of_the_golden_file(string culture) =>
        RequireSame(
            "brief.txt",
            Under(
                culture,
                () =>
                    StudyPipeline.RenderText(
                        ExampleStudy.Analyze(ShortStudy.Bytes),
                        80,
                        full: false
                    )
            )
        );

    [Fact]
    public void Every_line_of_the_text_report_fits_its_width() =>
        Assert.All(
            StudyPipeline.RenderText(ExampleStudy.Analyzed, 80, full: true).Split('\n'),
            line => Assert.True(line.Length <= 80, line)
        );

    [Theory]
    [MemberData(nameof(Cultures))]
    public void The_PDF_has_the_same_bytes_in_another_run_and_under_another_culture(string culture)
    {
        var expected = s_pdf.Value;

        Assert.Equal(expected, Under(culture, PdfHash));
    }

    private static string PdfHash() =>
        Convert.ToHexString(
            SHA256.HashData(
                StudyPipeline.Render(ExampleStudy.Analyze(ShortStudy.Bytes), PaperSize.A4).Pdf.Span
            )
        );

    private static void RequireSame(string file, string text) =>
        RepositoryFile.RequireSame(Golden + file, text.TrimEnd('\n') + "\n");

    // Each test runs on a flow of its own, so the culture does not reach the others.
    private static string Under(string culture, Func<string> text)
    {
        var before = CultureInfo.CurrentCulture;
        var beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            CultureInfo.CurrentUICulture = CultureInfo.CurrentCulture;
            return text();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }
    }
}

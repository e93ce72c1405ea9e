using System.Text;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The README's first command, and its report in the hands of outside readers.</summary>
[Trait("lane", "slow")]
[Collection<ReportedExampleTests>]
public sealed class FirstCommandTests(ReportedExample example)
{
    [Fact]
    public void The_first_command_ends_with_the_path_of_the_report()
    {
        Assert.Equal(0, example.Answer.ExitCode);
        Assert.Equal("", example.Answer.Error);
        Assert.Equal(example.A4, example.Answer.Lines[^1]);
        Assert.True(new FileInfo(example.A4).Length > 100_000);
    }

    [Fact]
    public void The_README_shows_that_command()
    {
        var readme = File.ReadAllText(Path.Combine(RepositoryFile.Root, "README.md"));

        Assert.Contains(
            "\ndotnet run --project src/StabilityStudy.Cli -- report example-studies/aptt-room-temperature\n",
            readme.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public async Task Page_1_states_both_decisions_and_has_the_signature_boxes(string paper)
    {
        var text = await FirstPage(example.On(paper));

        var words = string.Join(
            ' ',
            text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );
        Assert.Contains("Supported to 6 h,", words, StringComparison.Ordinal);
        Assert.Contains("with 6 reservations", words, StringComparison.Ordinal);
        Assert.Contains("Inconclusive at 2 h", words, StringComparison.Ordinal);
        Assert.Contains("One specimen decides.", words, StringComparison.Ordinal);
        Assert.Contains(
            "Today's 1 h was not tested and is not confirmed by this study.",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("ran this study", text, StringComparison.Ordinal);
        Assert.Contains(
            "approves, shortens or declines its conclusion",
            text,
            StringComparison.Ordinal
        );
        Assert.Equal(2, text.Split("NOT SIGNED").Length - 1);
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public async Task Qpdf_finds_nothing_to_say(string paper)
    {
        var answer = await OutsideTool.Run("qpdf", "--check", example.On(paper));

        Assert.True(answer.ExitCode == 0, answer.Out + answer.Error);
        Assert.DoesNotContain("WARNING", answer.Out + answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_font_is_embedded_with_a_text_mapping()
    {
        var answer = await OutsideTool.Run("pdffonts", example.A4);

        Assert.Equal(0, answer.ExitCode);
        Assert.True(answer.Lines.Length >= 4, answer.Out);
        Assert.All(answer.Lines[2..], line => Assert.Matches(@"\syes\s+yes\s+yes\s", line));
    }

    [Theory]
    [InlineData("a4", @"Page size:\s+595\.\d* x 841\.\d* pts \(A4\)")]
    [InlineData("letter", @"Page size:\s+612 x 792 pts \(letter\)")]
    public async Task The_document_is_tagged_titled_and_on_its_paper(string paper, string size)
    {
        var answer = await OutsideTool.Run("pdfinfo", example.On(paper));

        Assert.Equal(0, answer.ExitCode);
        Assert.Matches(@"Tagged:\s+yes", answer.Out);
        Assert.Matches(size, answer.Out);
        Assert.Matches(@"Title:\s+aPTT in whole blood at room temperature", answer.Out);
        Assert.Matches(@"JavaScript:\s+no", answer.Out);
        Assert.Matches(@"Encrypted:\s+no", answer.Out);
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public async Task Mutool_draws_every_page_without_a_warning(string paper)
    {
        var pages = await OutsideTool.Run("pdfinfo", example.On(paper));
        var count = pages
            .Lines.Single(line => line.StartsWith("Pages:", StringComparison.Ordinal))
            .Split(':')[1]
            .Trim();

        var answer = await OutsideTool.Run(
            "mutool",
            "draw",
            "-N",
            "-r",
            "20",
            "-F",
            "pnm",
            "-o",
            Path.Combine(example.Root, paper + "-%d.pnm"),
            example.On(paper)
        );

        Assert.True(answer.ExitCode == 0, answer.Error);
        Assert.DoesNotContain("warning", answer.Error, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("error", answer.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(
            StudyPipeline
                .Render(ExampleStudy.Analyzed, paper == "letter" ? PaperSize.Letter : PaperSize.A4)
                .PageCount.ToString(CultureInfo.InvariantCulture),
            count
        );
        Assert.Equal(
            count,
            Directory
                .GetFiles(example.Root, paper + "-*.pnm")
                .Length.ToString(CultureInfo.InvariantCulture)
        );
    }

    [Fact]
    public async Task The_attachments_are_the_bytes_that_were_analyzed()
    {
        var folder = Directory.CreateDirectory(Path.Combine(example.Root, "attached")).FullName;

        var answer = await OutsideTool.Run("pdfdetach", "-saveall", "-o", folder, example.A4);

        Assert.Equal(0, answer.ExitCode);
        Assert.Equal(
            [
                "analysis.json",
                "controls.csv",
                "protocol.toml",
                "results.csv",
                "specimens.csv",
                "study.toml",
            ],
            Directory
                .GetFiles(folder)
                .Select(file => Path.GetFileName(file))
                .Order(StringComparer.Ordinal)
        );
        SameBytes(example.AnalysisJson, folder, "analysis.json");
        SameBytes(Path.Combine(ExampleStudy.Folder, "protocol.toml"), folder, "protocol.toml");
        SameBytes(Path.Combine(ExampleStudy.Folder, "study.toml"), folder, "study.toml");
        Assert.True(Files.Intake.StudyIntake.Read(ExampleStudy.Bytes).TryGet(out var study));
        foreach (var canonical in study.Canonical.Files)
        {
            Assert.Equal(
                Encoding.UTF8.GetString(canonical.Bytes.Span),
                await File.ReadAllTextAsync(
                    Path.Combine(folder, canonical.Name),
                    TestContext.Current.CancellationToken
                )
            );
        }
    }

    private static async Task<string> FirstPage(string pdf)
    {
        var answer = await OutsideTool.Run("pdftotext", "-f", "1", "-l", "1", "-layout", pdf, "-");
        Assert.Equal(0, answer.ExitCode);
        return answer.Out;
    }

    private static void SameBytes(string expected, string folder, string name) =>
        Assert.True(
            File.ReadAllBytes(expected)
                .AsSpan()
                .SequenceEqual(File.ReadAllBytes(Path.Combine(folder, name))),
            name
        );
}

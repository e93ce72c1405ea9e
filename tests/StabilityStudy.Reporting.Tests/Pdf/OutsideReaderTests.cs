using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>What readers that share no code with the drawing see in it.</summary>
public class OutsideReaderTests
{
    private static readonly Lazy<ReadOnlyMemory<byte>> s_demo = new(() =>
        PdfDrawing.Draw(OddReports.All["demo"]).Pdf.ToArray()
    );

    [Fact]
    public async Task Pdffonts_finds_every_font_embedded_and_with_text_mapping()
    {
        var lines = (await Run("pdffonts")).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.True(lines.Length > 4);
        Assert.All(
            lines[2..],
            line => Assert.Matches(@"\+Report ?(Sans|Mono).*TrueType.*yes\s+yes\s+yes", line)
        );
    }

    [Fact]
    public async Task Pdftotext_reads_numbers_signs_and_chart_texts()
    {
        var text = await Run("pdftotext", "-layout", "{file}", "-");

        Assert.Contains("−8.1 (−9.4 to −6.8)", text, StringComparison.Ordinal);
        Assert.Contains("upper limit of", text, StringComparison.Ordinal);
        Assert.Contains("S-0417", text, StringComparison.Ordinal);
        Assert.Contains("page 2 of ", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdfinfo_reads_title_paper_tags_and_table_heads()
    {
        var facts = await Run("pdfinfo");
        var structure = await Run("pdfinfo", "-struct-text", "{file}");

        Assert.Matches(@"Title:\s+Stability of citrated whole blood at room temperature", facts);
        Assert.Matches(@"Tagged:\s+yes", facts);
        Assert.Matches(@"Page size:\s+595\.\d+ x 841\.\d+ pts \(A4\)", facts);
        Assert.Matches("""TH:\s+/Scope /Column\s+"Specimens""", structure);
        Assert.Matches(
            """P \(block\)\s+"Attention: two heparin specimens [^"]* conclusion stays\. ?"\s""",
            structure
        );
        Assert.Contains("Figure", structure, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Qpdf_finds_no_error()
    {
        // Code 3 are warnings: the streams have no checksum until the file is rewritten for signing.
        var (code, output) = await OnFile("qpdf", "--check", "{file}");

        Assert.True(code is 0 or 3, output);
        Assert.DoesNotContain("rror", output, StringComparison.Ordinal);
    }

    private static async Task<string> Run(string program, params string[] arguments)
    {
        var (code, output) = await OnFile(program, arguments.Length == 0 ? ["{file}"] : arguments);
        Assert.True(code == 0, output);
        return output;
    }

    private static async Task<(int ExitCode, string Output)> OnFile(
        string program,
        params string[] arguments
    )
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".pdf");
        try
        {
            await File.WriteAllBytesAsync(
                file,
                s_demo.Value,
                TestContext.Current.CancellationToken
            );
            var answer = await OutsideTool.Run(
                program,
                [.. arguments.Select(a => a is "{file}" ? file : a)]
            );
            return (answer.ExitCode, answer.Out + answer.Error);
        }
        finally
        {
            File.Delete(file);
        }
    }
}

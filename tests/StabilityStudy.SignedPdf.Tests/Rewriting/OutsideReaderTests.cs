using System.Text;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Tools;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

/// <summary>What programs of others say about a rewritten file.</summary>
public sealed class OutsideReaderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _file;

    public OutsideReaderTests() =>
        _file = _folder.Write("report.pdf", Rewritten.Of(DrawnDocument.Draw()));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Qpdf_has_nothing_to_say()
    {
        var answer = await OutsideTool.Run("qpdf", "--check", _file);

        Assert.Equal(0, answer.ExitCode);
        Assert.Equal("", answer.Error);
        Assert.Contains(
            "No syntax or stream encoding errors found",
            answer.Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Pdffonts_finds_every_font_embedded()
    {
        var answer = await OutsideTool.Run("pdffonts", _file);
        var fonts = answer.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];

        Assert.Equal("", answer.Error);
        Assert.NotEmpty(fonts);
        Assert.All(
            fonts,
            static font =>
                Assert.Matches("^[A-Z]{6}\\+DejaVu ?Sans ?Condensed .* yes yes (yes|no) ", font)
        );
    }

    [Fact]
    public async Task Pdfdetach_gives_the_attached_bytes()
    {
        var answer = await OutsideTool.Run("pdfdetach", "-saveall", "-o", _folder.FullName, _file);

        Assert.Equal("", answer.Error);
        Assert.Equal(Rewritten.CsvBytes, await ReadAsync("results.csv"));
        Assert.Equal("format = 1\n"u8.ToArray(), await ReadAsync("prüfplan.toml"));
        Assert.Empty(await ReadAsync("empty.txt"));
        Assert.Equal(
            "attached while drawing",
            Encoding.ASCII.GetString(await ReadAsync("drawn.txt"))
        );
    }

    [Fact]
    public async Task Pdfdetach_lists_the_attached_files()
    {
        var answer = await OutsideTool.Run("pdfdetach", "-list", _file);

        Assert.Equal("", answer.Error);
        Assert.StartsWith("4 embedded files", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdfinfo_reads_the_tags()
    {
        var answer = await OutsideTool.Run("pdfinfo", "-struct-text", _file);

        Assert.Equal("", answer.Error);
        Assert.Contains("\"Heading of page 3\"", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Figure", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdfinfo_reads_title_dates_and_metadata()
    {
        var information = await OutsideTool.Run("pdfinfo", "-rawdates", _file);
        var metadata = await OutsideTool.Run("pdfinfo", "-meta", _file);

        Assert.Equal("", information.Error + metadata.Error);
        Assert.Matches("Title: +Stability of <aPTT> & PT\n", information.Out);
        Assert.Matches("CreationDate: +D:20260102030405-05'00\n", information.Out);
        Assert.Matches("Tagged: +yes", information.Out);
        Assert.Contains(
            "Stability of &lt;aPTT&gt; &amp; PT",
            metadata.Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Mutool_draws_it_without_a_warning()
    {
        var answer = await OutsideTool.Run(
            "mutool",
            "draw",
            "-N", // Some builds have no color management, and say so for every file.
            "-r",
            "30",
            "-o",
            Path.Combine(_folder.FullName, "page-%d.png"),
            _file
        );

        Assert.Equal(0, answer.ExitCode);
        Assert.DoesNotContain("warning", answer.Error, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("error", answer.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(3, Directory.GetFiles(_folder.FullName, "page-*.png").Length);
    }

    [Fact]
    public async Task Mutool_draws_the_same_pages_before_and_after()
    {
        var drawn = DrawnDocument.Draw();
        var before = await OutsideTool.Run(
            "mutool",
            "draw",
            "-F",
            "pnm",
            "-r",
            "60",
            "-s",
            "5",
            "-o",
            Path.Combine(_folder.FullName, "before-%d.pnm"),
            _folder.Write("drawn.pdf", drawn)
        );
        var after = await OutsideTool.Run(
            "mutool",
            "draw",
            "-F",
            "pnm",
            "-r",
            "60",
            "-s",
            "5",
            "-o",
            Path.Combine(_folder.FullName, "after-%d.pnm"),
            _file
        );

        Assert.Equal(0, before.ExitCode + after.ExitCode);
        for (var page = 1; page <= 3; page++)
        {
            Assert.Equal(
                await ReadAsync($"before-{page}.pnm"),
                await ReadAsync($"after-{page}.pnm")
            );
        }
    }

    private Task<byte[]> ReadAsync(string name) =>
        File.ReadAllBytesAsync(
            Path.Combine(_folder.FullName, name),
            TestContext.Current.CancellationToken
        );
}

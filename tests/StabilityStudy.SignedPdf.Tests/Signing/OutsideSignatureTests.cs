using System.Text.RegularExpressions;
using StabilityStudy.SignedPdf.Tests.Tools;
using StabilityStudy.SignedPdf.Tests.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>What programs of others say about our signatures.</summary>
public sealed class OutsideSignatureTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Pdfsig_finds_both_signatures_valid_and_trusted()
    {
        var answer = await Pdfsig(SignedDocument.SignedTwice);

        Assert.Equal(0, answer.ExitCode);
        Assert.Equal(2, Regex.Count(answer.Out, "Signature is Valid\\."));
        Assert.Equal(2, Regex.Count(answer.Out, "Certificate is Trusted\\."));
        Assert.Equal(1, Regex.Count(answer.Out, "Total document signed"));
        Assert.Equal(2, Regex.Count(answer.Out, "ETSI\\.CAdES\\.detached"));
        Assert.Contains(
            "Signer Certificate Common Name: Ada Author",
            answer.Out,
            StringComparison.Ordinal
        );
        Assert.Contains("Signature Field Name: approver", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdfsig_finds_a_time_stamped_signature_valid()
    {
        using var authority = new TimeStampAuthority();
        var answer = await Pdfsig(
            SignedDocument.Sign(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    TimeStamp = authority.Source,
                }
            )
        );

        Assert.Equal(1, Regex.Count(answer.Out, "Signature is Valid\\."));
        Assert.Equal(1, Regex.Count(answer.Out, "Certificate is Trusted\\."));
    }

    [Fact]
    public async Task Pdfsig_finds_an_altered_document_invalid()
    {
        var answer = await Pdfsig(
            Tampering.Replaced(SignedDocument.SignedTwice, "(Ada Author)", "(Eve Author)")
        );

        Assert.DoesNotContain("Signature is Valid.", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Digest Mismatch", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Qpdf_has_nothing_to_say_about_any_revision()
    {
        foreach (
            var bytes in new[]
            {
                SignedDocument.Unsigned,
                SignedDocument.SignedOnce,
                SignedDocument.SignedTwice,
            }
        )
        {
            var answer = await OutsideTool.Run("qpdf", "--check", _folder.Write("q.pdf", bytes));

            Assert.Equal("", answer.Error);
            Assert.Equal(0, answer.ExitCode);
        }
    }

    [Fact]
    public async Task Mutool_accepts_the_history_of_changes() =>
        Assert.Equal(0, await ChangeHistory(SignedDocument.SignedTwice));

    [Fact]
    public async Task Mutool_too_rejects_a_painted_page() =>
        Assert.NotEqual(
            0,
            await ChangeHistory(Tampering.WithPaintedPage(SignedDocument.SignedTwice))
        );

    [Fact]
    public async Task Mutool_draws_the_stamps_without_a_warning()
    {
        var picture = Path.Combine(_folder.FullName, "page.pgm");
        var file = _folder.Write("signed.pdf", SignedDocument.SignedTwice);
        var answer = await OutsideTool.Run(
            "mutool",
            "draw",
            "-N",
            "-F",
            "txt",
            "-o",
            "-",
            file,
            "1"
        );
        var drawn = await OutsideTool.Run(
            "mutool",
            "draw",
            "-N",
            "-r",
            "72",
            "-o",
            picture,
            file,
            "1"
        );

        Assert.Equal(0, answer.ExitCode + drawn.ExitCode);
        Assert.DoesNotContain(
            "warning",
            answer.Error + drawn.Error,
            StringComparison.OrdinalIgnoreCase
        );
        Assert.Contains("I have carried out the study ✓", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Boris Approver", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pdffonts_finds_the_font_of_the_stamps_embedded()
    {
        var answer = await OutsideTool.Run(
            "pdffonts",
            _folder.Write("signed.pdf", SignedDocument.SignedTwice)
        );

        Assert.Equal("", answer.Error);
        Assert.All(
            answer.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..],
            static font => Assert.Matches(" yes (yes|no) +(yes|no) ", font)
        );
    }

    [Fact]
    public async Task Pdfinfo_finds_the_fields_among_the_tags()
    {
        var answer = await OutsideTool.Run(
            "pdfinfo",
            "-struct",
            _folder.Write("signed.pdf", SignedDocument.SignedTwice)
        );

        Assert.Equal("", answer.Error);
        Assert.Equal(2, Regex.Count(answer.Out, "Form"));
    }

    private async Task<ToolAnswer> Pdfsig(byte[] file)
    {
        var database = "sql:" + _folder.FullName;
        var trust = _folder.Write("trust.pem", Signers.Authority.CertificatePem);
        Assert.Equal(
            0,
            (await OutsideTool.Run("certutil", "-N", "-d", database, "--empty-password")).ExitCode
        );
        var added = await OutsideTool.Run(
            "certutil",
            "-A",
            "-d",
            database,
            "-n",
            "authority",
            "-t",
            "C,C,C",
            "-a",
            "-i",
            trust
        );
        Assert.Equal(0, added.ExitCode);
        return await OutsideTool.Run(
            "pdfsig",
            "-nssdir",
            database,
            _folder.Write("signed.pdf", file)
        );
    }

    private async Task<int> ChangeHistory(byte[] file)
    {
        var script = _folder.Write(
            "history.js",
            "print(new PDFDocument(scriptArgs[0]).validateChangeHistory())"u8
        );
        var answer = await OutsideTool.Run("mutool", "run", script, _folder.Write("h.pdf", file));
        Assert.Equal(0, answer.ExitCode);
        return int.Parse(answer.Out, CultureInfo.InvariantCulture);
    }
}

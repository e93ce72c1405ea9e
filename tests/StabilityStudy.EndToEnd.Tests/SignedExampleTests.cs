using StabilityStudy.Cli.Tests;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The README's way from report to evidence, by the built program, and what outside readers say about it.</summary>
public sealed class SignedExampleTests : IAsyncLifetime
{
    private readonly StudyCopy _copy = StudyCopy.Create();

    private string Signed => Assert.Single(Directory.GetFiles(_copy.At("study", "signed")));

    public async ValueTask InitializeAsync()
    {
        File.Copy(
            Path.Combine(ExampleStudy.Folder, "protocol.lock"),
            _copy.At("study", "protocol.lock")
        );
        await Done("report", _copy.Study);
        await Done("trial-certificate", _copy.At("keys"), "--name", "Lab Scientist One");
        await Done("trial-certificate", _copy.At("keys"), "--name", "Medical Director One");
        await Done(Sign(_copy.At("study", "out", "report.pdf"), "author", "lab-scientist-one"));
        await Done([.. Sign(Signed, "approver", "medical-director-one"), "--decision", "approve"]);
    }

    public ValueTask DisposeAsync()
    {
        _copy.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task All_four_parts_hold()
    {
        var answer = await BuiltProgram.Run("verify", Signed, "--trust", _copy.At("keys"));

        Assert.Equal(0, answer.ExitCode);
        Assert.Equal("All four parts hold.", answer.Lines[^1]);
        Assert.Equal(4, answer.Lines.Count(line => line.Trim() == "HOLDS"));
    }

    [Fact]
    public async Task An_outside_reader_finds_both_signatures_valid_and_trusted()
    {
        var database = "sql:" + Directory.CreateDirectory(_copy.At("nss")).FullName;
        await Tool("certutil", "-N", "-d", database, "--empty-password");
        foreach (var name in new[] { "lab-scientist-one", "medical-director-one" })
        {
            await Tool(
                "certutil",
                "-A",
                "-d",
                database,
                "-n",
                name,
                "-t",
                "P,P,P",
                "-i",
                _copy.At("keys", name + ".pem")
            );
        }

        var answer = await OutsideTool.Run("pdfsig", "-nssdir", database, Signed);

        Assert.Equal(
            2,
            answer.Lines.Count(line =>
                line.Contains("Signature is Valid", StringComparison.Ordinal)
            )
        );
        Assert.Equal(
            2,
            answer.Lines.Count(line =>
                line.Contains("Certificate is Trusted", StringComparison.Ordinal)
            )
        );
    }

    [Fact]
    public async Task The_file_is_clean_its_fonts_are_embedded_and_both_stamps_are_on_page_1()
    {
        var check = await OutsideTool.Run("qpdf", "--check", Signed);
        var fonts = await OutsideTool.Run("pdffonts", Signed);
        var text = await OutsideTool.Run("mutool", "draw", "-F", "text", Signed, "1");

        Assert.Equal(0, check.ExitCode);
        Assert.All(
            fonts.Lines.Skip(2),
            line => Assert.Contains(" yes ", line, StringComparison.Ordinal)
        );
        Assert.Contains("Lab Scientist One", text.Out, StringComparison.Ordinal);
        Assert.Contains("Decision: approved", text.Out, StringComparison.Ordinal);
        Assert.Equal(
            2,
            text.Out.Split("Self-issued certificate", StringSplitOptions.None).Length - 1
        );
    }

    private string[] Sign(string report, string role, string key) =>
        [
            "sign",
            report,
            "--role",
            role,
            "--key",
            _copy.At("keys", key + ".p12"),
            "--passphrase-file",
            _copy.At("keys", key + ".passphrase"),
        ];

    private static async Task Done(params string[] arguments)
    {
        var answer = await BuiltProgram.Run(arguments);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }

    private static async Task Tool(string tool, params string[] arguments)
    {
        var answer = await OutsideTool.Run(tool, arguments);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }
}

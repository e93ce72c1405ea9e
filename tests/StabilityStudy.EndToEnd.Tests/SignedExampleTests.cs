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
        var issued = Directory.CreateDirectory(_copy.At("issued")).FullName;
        await Tool(
            "openssl",
            [
                "req",
                "-x509",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-days",
                "300",
                "-subj",
                "/CN=Invented Authority",
                "-addext",
                "basicConstraints=critical,CA:TRUE",
                "-addext",
                "keyUsage=critical,keyCertSign,cRLSign",
                "-keyout",
                Path.Combine(issued, "ca.key"),
                "-out",
                Path.Combine(issued, "ca.pem"),
            ]
        );
        await Issue(issued, "lab", "Lab Scientist One");
        await Issue(issued, "director", "Medical Director One");
        var signed = _copy.At("issued.pdf");
        await Done([
            .. SignWith(issued, _copy.At("study", "out", "report.pdf"), "author", "lab"),
            "-o",
            signed,
        ]);
        await Done([.. SignWith(issued, signed, "approver", "director"), "--decision", "approve"]);
        var database = "sql:" + Directory.CreateDirectory(_copy.At("nss")).FullName;
        await Tool("certutil", ["-N", "-d", database, "--empty-password"]);
        await Tool(
            "certutil",
            [
                "-A",
                "-d",
                database,
                "-n",
                "authority",
                "-t",
                "C,C,C",
                "-i",
                Path.Combine(issued, "ca.pem"),
            ]
        );

        var outside = await OutsideTool.Run("pdfsig", "-nssdir", database, signed);
        var own = await BuiltProgram.Run(
            "verify",
            signed,
            "--trust",
            Path.Combine(issued, "ca.pem")
        );

        Assert.Equal(2, Lines(outside, "Signature is Valid"));
        Assert.Equal(2, Lines(outside, "Certificate is Trusted"));
        Assert.Equal(0, own.ExitCode);
        Assert.Contains(
            "issued by CN=Invented Authority",
            Unbroken(own.Out),
            StringComparison.Ordinal
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

    private static string[] SignWith(string folder, string report, string role, string name) =>
        ["sign", report, "--role", role, "--key", Path.Combine(folder, name + ".pem")];

    /// <summary>A key and a certificate for it, both in one PEM file, issued by the authority.</summary>
    private static async Task Issue(string folder, string file, string name)
    {
        var (key, request, certificate) = (
            Path.Combine(folder, file + ".key"),
            Path.Combine(folder, file + ".csr"),
            Path.Combine(folder, file + ".crt")
        );
        await Tool(
            "openssl",
            [
                "req",
                "-new",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-subj",
                "/CN=" + name,
                "-keyout",
                key,
                "-out",
                request,
            ]
        );
        var extensions = Path.Combine(folder, file + ".ext");
        await File.WriteAllTextAsync(
            extensions,
            "keyUsage=critical,digitalSignature,nonRepudiation\nextendedKeyUsage=emailProtection\n",
            TestContext.Current.CancellationToken
        );
        await Tool(
            "openssl",
            [
                "x509",
                "-req",
                "-days",
                "300",
                "-in",
                request,
                "-CA",
                Path.Combine(folder, "ca.pem"),
                "-CAkey",
                Path.Combine(folder, "ca.key"),
                "-CAcreateserial",
                "-extfile",
                extensions,
                "-out",
                certificate,
            ]
        );
        await File.WriteAllTextAsync(
            Path.Combine(folder, file + ".pem"),
            await File.ReadAllTextAsync(key, TestContext.Current.CancellationToken)
                + await File.ReadAllTextAsync(certificate, TestContext.Current.CancellationToken),
            TestContext.Current.CancellationToken
        );
    }

    private static int Lines(ToolAnswer answer, string text) =>
        answer.Lines.Count(line => line.Contains(text, StringComparison.Ordinal));

    private static string Unbroken(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static async Task Tool(string tool, string[] arguments)
    {
        var answer = await OutsideTool.Run(tool, arguments);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }
}

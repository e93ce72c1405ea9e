using System.Text.RegularExpressions;
using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The README's way from report to evidence, by the built program, and what outside readers say about it.</summary>
[Trait("lane", "slow")]
public sealed partial class SignedExampleTests(SignedExample example) : IClassFixture<SignedExample>
{
    [Fact]
    public async Task Three_parts_hold_and_the_lock_is_dated_by_a_clock_alone()
    {
        var answer = await BuiltProgram.Run(
            "verify",
            example.WithSignatures,
            "--trust",
            example.Keys
        );

        Assert.Equal(5, answer.ExitCode);
        Assert.Contains(
            "Nothing but a computer's own clock shows the time of lock 1",
            Unbroken(answer.Out),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Decision: approved",
            string.Join(' ', answer.Lines[^2..]),
            StringComparison.Ordinal
        );
        Assert.Equal(3, answer.Lines.Count(line => line.Trim() == "HOLDS"));
    }

    [Fact]
    public async Task An_outside_reader_finds_both_signatures_valid_and_trusted()
    {
        var issued = Directory.CreateDirectory(example.At("issued")).FullName;
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
        var signed = example.At("issued.pdf");
        var author = await Run.Of([
            .. SignWith(issued, example.Report, "author", "lab"),
            "-o",
            signed,
        ]);
        Assert.True(author.Code == ExitCode.Done, author.Error);
        var approver = await Run.Of([
            .. SignWith(issued, signed, "approver", "director"),
            "--decision",
            "approve",
        ]);
        Assert.True(approver.Code == ExitCode.Done, approver.Error);
        var database = "sql:" + Directory.CreateDirectory(example.At("nss")).FullName;
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
        var own = await Run.Of("verify", signed, "--trust", Path.Combine(issued, "ca.pem"));

        Assert.Equal(2, Lines(outside, "Signature is Valid"));
        Assert.Equal(2, Lines(outside, "Certificate is Trusted"));
        Assert.Equal(ExitCode.VerificationIncomplete, own.Code);
        Assert.Contains(
            "issued by CN=Invented Authority, is trusted",
            Unbroken(own.Out),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "ask its issuer CN=Invented Authority for the list of revoked certificates",
            Unbroken(own.Out),
            StringComparison.Ordinal
        );

        var trusted = await TrustedWithList(issued);
        var whole = await BuiltProgram.Run("verify", signed, "--trust", trusted);

        // All but the lock, which a computer's clock alone dates.
        Assert.Equal(5, whole.ExitCode);
        Assert.Contains("was not revoked", Unbroken(whole.Out), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_of_the_trust_folder_that_is_not_right_is_named_and_the_rest_counts()
    {
        var folder = Directory.CreateDirectory(example.At("mixed")).FullName;
        foreach (var file in Directory.GetFiles(example.Keys))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        await File.WriteAllTextAsync(
            Path.Combine(folder, "broken.crl"),
            "no list",
            TestContext.Current.CancellationToken
        );
        var answer = await BuiltProgram.Run("verify", example.WithSignatures, "--trust", folder);

        Assert.Equal(5, answer.ExitCode);
        Assert.Contains(
            "broken.crl: This is neither a certificate nor a list of revoked certificates. It was left out",
            Unbroken(answer.Out),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "is trusted by the given trust store",
            Unbroken(answer.Out),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_file_is_clean_its_fonts_are_embedded_and_both_stamps_are_on_page_1()
    {
        var check = await OutsideTool.Run("qpdf", "--check", example.WithSignatures);
        var fonts = await OutsideTool.Run("pdffonts", example.WithSignatures);
        var text = await OutsideTool.Run(
            "mutool",
            "draw",
            "-F",
            "text",
            example.WithSignatures,
            "1"
        );

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

    [Fact]
    public async Task It_breaks_no_rule_of_the_standards_that_it_claims_before_and_after_signing()
    {
        foreach (var file in (string[])[example.Report, example.WithSignatures])
        {
            Assert.Empty(
                await ArchiveRules.BrokenBy(
                    await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken)
                )
            );
        }
    }

    /// <summary>
    /// Preflight of Apache PDFBox checks PDF/A-1b only. The report follows PDF/A-3, which allows transparency, embedded
    /// files and cross-reference streams and asks for no CIDSet; that it says part 3 and not 1 is complained of as well, and anything else would be a defect.
    /// </summary>
    [Fact]
    public async Task Preflight_complains_only_of_what_later_versions_of_the_standard_allow()
    {
        string[] jars =
        [
            "preflight",
            "pdfbox2",
            "fontbox2",
            "xmpbox",
            "commons-logging",
            "javax.activation",
            "jaxb-api",
        ];
        var path = jars.Select(jar => $"/usr/share/java/{jar}.jar").ToArray();
        Assert.All(path, OutsideTool.Require);

        var answer = await OutsideTool.Run(
            "java",
            "-cp",
            string.Join(':', path),
            "org.apache.pdfbox.preflight.Validator_A1b",
            example.WithSignatures
        );
        var complaints = (answer.Out + answer.Error)
            .Split('\n')
            .Where(line => PreflightComplaint().IsMatch(line))
            .ToArray();

        Assert.NotEmpty(complaints);
        Assert.All(
            complaints,
            line =>
                Assert.Contains(
                    new[]
                    {
                        "transparency",
                        "Transparency error, ca entry in a ExtGState is invalid",
                        "EmbeddedFile entry is present",
                        "The CIDSet entry is missing for the Composite Subset",
                        "/XRef cross reference streams are not allowed",
                        "Error on MetaData, part must be 1",
                    },
                    allowed => line.Contains(allowed, StringComparison.Ordinal)
                )
        );
    }

    /// <summary>"2.4.1 : Invalid Color space, …".</summary>
    [GeneratedRegex(
        "^[0-9][0-9.]* : ",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking
    )]
    private static partial Regex PreflightComplaint();

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

    /// <summary>A folder with the certificate of the authority and its list of revoked ones, whose names do not tell which is which.</summary>
    private static async Task<string> TrustedWithList(string issued)
    {
        var folder = Directory.CreateDirectory(Path.Combine(issued, "trusted")).FullName;
        File.Copy(Path.Combine(issued, "ca.pem"), Path.Combine(folder, "one"));
        var settings = Path.Combine(issued, "ca.cnf");
        var database = Path.Combine(issued, "index.txt");
        await File.WriteAllTextAsync(database, "", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            settings,
            $"[ca]\ndefault_ca = own\n[own]\ndatabase = {database}\ndefault_md = sha256\ndefault_crl_days = 30\n",
            TestContext.Current.CancellationToken
        );
        await Tool(
            "openssl",
            [
                "ca",
                "-gencrl",
                "-config",
                settings,
                "-keyfile",
                Path.Combine(issued, "ca.key"),
                "-cert",
                Path.Combine(issued, "ca.pem"),
                "-out",
                Path.Combine(folder, "two"),
            ]
        );
        return folder;
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

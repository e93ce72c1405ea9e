using System.Net;
using System.Net.Sockets;
using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>Signing with keys that only openssl sees, as with those on a card: prepared, signed by openssl, and put in.</summary>
[Trait("lane", "slow")]
public sealed class SigningTokenTests(SignedExample example) : IClassFixture<SignedExample>
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Keys_of_both_kinds_sign_and_the_result_is_what_sign_writes()
    {
        using var study = Study();
        await MakeToken(study, "author", "Lab Scientist One", "rsa:2048");
        await MakeToken(study, "approver", "Medical Director One", "ec");

        var said = await Prepare(study, study.At("study", "out", "report.pdf"), "author");
        Assert.Contains("Nothing is signed yet", said.Out, Comparison);
        Assert.Contains("\n  openssl cms -sign -binary -cades", said.Out, Comparison);
        Assert.DoesNotContain(
            "\"sign\"",
            await File.ReadAllTextAsync(study.At("study", StudyRecord.Name), Cancellation),
            Comparison
        );
        var unsigned = await Run.Of("verify", study.At("author", "prepared.pdf"));
        Assert.Equal(ExitCode.VerificationFailed, unsigned.Code);
        Assert.Contains("prepared, but not signed yet", Unbroken(unsigned.Out), Comparison);

        await Answer(study, "author");
        var author = await Complete(study, "author");
        Assert.True(author.Code == ExitCode.Done, author.Error);
        Assert.Contains("Signed as author. Still to sign: approver.", author.Out, Comparison);
        var signed = Assert.Single(Directory.GetFiles(study.At("study", "signed")));
        await Prepare(study, signed, "approver", "--decision", "approve");
        await Answer(study, "approver");
        using var authority = await Authority.Start(study.At("authority"));
        var approver = await Complete(study, "approver", "--time-stamp", authority.Address);
        Assert.True(approver.Code == ExitCode.Done, approver.Error);
        Assert.Contains("Everybody has signed.", approver.Out, Comparison);

        var trust = Directory.CreateDirectory(study.At("trust")).FullName;
        File.Copy(study.At("author.pem"), Path.Combine(trust, "author.pem"));
        File.Copy(study.At("approver.pem"), Path.Combine(trust, "approver.pem"));
        var verified = await BuiltProgram.Run(
            "verify",
            signed,
            "--trust",
            trust,
            "--trust-time",
            authority.Certificate
        );
        var withKeys = await BuiltProgram.Run(
            "verify",
            example.WithSignatures,
            "--trust",
            example.Keys
        );
        Assert.True(withKeys.ExitCode == verified.ExitCode, verified.Out);
        Assert.Equal(
            withKeys.Lines.Count(line => line.Trim() == "HOLDS"),
            verified.Lines.Count(line => line.Trim() == "HOLDS")
        );
        Assert.Contains("by Trial Time", Unbroken(verified.Out), Comparison);

        var record = await File.ReadAllBytesAsync(
            study.At("study", StudyRecord.Name),
            Cancellation
        );
        var last = System.Text.Encoding.UTF8.GetString(record).TrimEnd('\n').Split('\n')[^2..];
        Assert.Empty(StudyRecord.Check(record, null));
        Assert.Contains("Lab Scientist One (author)", last[0], Comparison);
        Assert.Contains("Medical Director One (approver)", last[1], Comparison);
        Assert.Contains("\"decision\":\"approved", last[1], Comparison);
    }

    [Fact]
    public async Task What_is_to_be_left_away_is_refused()
    {
        using var study = Study();
        await MakeToken(study, "author", "Lab Scientist One", "ec");
        await Prepare(study, study.At("study", "out", "report.pdf"), "author");
        foreach (
            var (options, expected) in (IEnumerable<(string[], string)>)
                [
                    (["-stream"], "written in BER"),
                    (["-nodetach"], "detached"),
                    (["-nocerts"], "-nocerts"),
                    (["-keyid"], "-keyid"),
                    (["-md", "sha1"], "SHA-256"),
                ]
        )
        {
            await Answer(study, "author", options);
            var files = study.Files();

            var answer = await Complete(study, "author");

            Assert.Equal(ExitCode.WrongUsage, answer.Code);
            Assert.Contains(expected, answer.Error, Comparison);
            Assert.Equal(files, study.Files());
        }
    }

    [Fact]
    public async Task What_was_prepared_is_not_replaced_and_is_not_put_into_another_report()
    {
        using var study = Study();
        await MakeToken(study, "author", "Lab Scientist One", "ec");
        var report = study.At("study", "out", "report.pdf");
        await Prepare(study, report, "author");
        await Answer(study, "author");

        var again = await Run.Of(Preparing(study, report, "author"));
        var elsewhere = await Run.Of(
            "sign",
            report,
            "--complete",
            study.At("author", "answer.p7s")
        );
        File.Copy(example.WithSignatures, report, overwrite: true);
        var changed = await Complete(study, "author");

        Assert.Contains("not overwritten", again.Error, Comparison);
        Assert.Contains("no folder that --prepare wrote", elsewhere.Error, Comparison);
        Assert.Contains("changed or signed since", changed.Error, Comparison);
        Assert.All(
            new[] { again, elsewhere, changed },
            run => Assert.Equal(ExitCode.WrongUsage, run.Code)
        );
    }

    /// <summary>The example with its unsigned report.</summary>
    private StudyCopy Study()
    {
        var study = StudyCopy.CreateLocked();
        Directory.CreateDirectory(study.At("study", "out"));
        File.Copy(example.Report, study.At("study", "out", "report.pdf"));
        File.Copy(
            Path.Combine(Path.GetDirectoryName(example.Report)!, "..", StudyRecord.Name),
            study.At("study", StudyRecord.Name)
        );
        // What the other copy signed is of no concern here.
        var record = File.ReadAllLines(study.At("study", StudyRecord.Name));
        File.WriteAllText(
            study.At("study", StudyRecord.Name),
            string.Concat(
                record.Where(line => !line.Contains("\"sign\"", Comparison)).Select(l => l + "\n")
            )
        );
        return study;
    }

    /// <summary>A key that stays with openssl, and its certificate.</summary>
    private static Task MakeToken(StudyCopy study, string role, string name, string kind) =>
        Openssl([
            "req",
            "-x509",
            "-newkey",
            kind,
            .. kind == "ec" ? ["-pkeyopt", "ec_paramgen_curve:P-256"] : Array.Empty<string>(),
            "-nodes",
            "-days",
            "30",
            "-subj",
            "/CN=" + name,
            "-addext",
            "basicConstraints=critical,CA:FALSE",
            "-addext",
            "keyUsage=critical,digitalSignature,nonRepudiation",
            "-keyout",
            study.At(role + ".key"),
            "-out",
            study.At(role + ".pem"),
        ]);

    private static string[] Preparing(StudyCopy study, string report, string role) =>
        [
            "sign",
            report,
            "--role",
            role,
            "--certificate",
            study.At(role + ".pem"),
            "--prepare",
            study.At(role),
        ];

    private static async Task<Run> Prepare(
        StudyCopy study,
        string report,
        string role,
        params string[] more
    )
    {
        var run = await Run.Of([.. Preparing(study, report, role), .. more]);
        Assert.True(run.Code == ExitCode.Done, run.Error);
        return run;
    }

    /// <summary>The command that --prepare names, with options more.</summary>
    private static Task Answer(StudyCopy study, string role, params string[] more) =>
        Openssl([
            "cms",
            "-sign",
            "-binary",
            "-cades",
            "-md",
            "sha256",
            "-nosmimecap",
            "-outform",
            "DER",
            "-signer",
            study.At(role, "certificate.pem"),
            "-inkey",
            study.At(role + ".key"),
            "-in",
            study.At(role, "to-sign.bin"),
            "-out",
            study.At(role, "answer.p7s"),
            .. more,
        ]);

    private static Task<Run> Complete(StudyCopy study, string role, params string[] more) =>
        Run.Of([
            "sign",
            study.At(role, "prepared.pdf"),
            "--complete",
            study.At(role, "answer.p7s"),
            .. more,
        ]);

    private static string Unbroken(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static async Task Openssl(string[] arguments)
    {
        var answer = await OutsideTool.Run("openssl", arguments);
        Assert.True(answer.ExitCode == 0, answer.Error);
    }

    /// <summary>A time-stamp authority over HTTP on this machine, played by openssl.</summary>
    private sealed class Authority : IDisposable
    {
        private readonly HttpListener _listener = new();
        private readonly string _folder;

        private Authority(string folder, string address)
        {
            (_folder, Address) = (folder, address);
            _listener.Prefixes.Add(address);
            _listener.Start();
        }

        public string Address { get; }

        public string Certificate => Path.Combine(_folder, "tsa.pem");

        public static async Task<Authority> Start(string folder)
        {
            Directory.CreateDirectory(folder);
            var key = Path.Combine(folder, "tsa.key");
            await Openssl([
                "req",
                "-x509",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-days",
                "30",
                "-subj",
                "/CN=Trial Time",
                "-addext",
                "basicConstraints=critical,CA:FALSE",
                "-addext",
                "keyUsage=critical,digitalSignature",
                "-addext",
                "extendedKeyUsage=critical,timeStamping",
                "-keyout",
                key,
                "-out",
                Path.Combine(folder, "tsa.pem"),
            ]);
            await File.WriteAllTextAsync(Path.Combine(folder, "serial"), "01\n", Cancellation);
            await File.WriteAllTextAsync(
                Path.Combine(folder, "ts.cnf"),
                $"[tsa]\nserial = {folder}/serial\nsigner_cert = {folder}/tsa.pem\nsigner_key = {key}\nsigner_digest = sha256\ndefault_policy = 1.2.3.4.1\ndigests = sha256\ness_cert_id_alg = sha256\n",
                Cancellation
            );
            var authority = new Authority(folder, $"http://127.0.0.1:{FreePort()}/");
            _ = authority.AnswerOne();
            return authority;
        }

        public void Dispose() => ((IDisposable)_listener).Dispose();

        private static int FreePort()
        {
            using var listener = new TcpListener(IPAddress.Loopback, 0);
            listener.Start();
            return ((IPEndPoint)listener.LocalEndpoint).Port;
        }

        private async Task AnswerOne()
        {
            var context = await _listener.GetContextAsync();
            var query = Path.Combine(_folder, "request.tsq");
            var response = Path.Combine(_folder, "response.tsr");
            await using (var file = File.Create(query))
            {
                await context.Request.InputStream.CopyToAsync(file, Cancellation);
            }

            await Openssl([
                "ts",
                "-reply",
                "-config",
                Path.Combine(_folder, "ts.cnf"),
                "-section",
                "tsa",
                "-queryfile",
                query,
                "-out",
                response,
            ]);
            await context.Response.OutputStream.WriteAsync(
                await File.ReadAllBytesAsync(response, Cancellation),
                Cancellation
            );
            context.Response.Close();
        }
    }
}

using System.Net;
using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>A signed report gets an archive time stamp from an authority that openssl plays, and outside readers still find its signatures right.</summary>
[Trait("lane", "slow")]
public sealed class RenewTests(SignedExample example) : IClassFixture<SignedExample>
{
    [Fact]
    public async Task A_renewed_report_verifies_and_outside_readers_find_its_signatures_valid()
    {
        using var copy = StudyCopy.CreateOf(ExampleStudy.SmallFolder, "protocol.toml");
        var report = copy.At("renewed.pdf");
        File.Copy(example.WithSignatures, report);
        await using var authority = await Authority.Start(copy.At("authority"));
        string[] trust =
        [
            "--trust",
            Path.Combine(example.Keys, "lab-scientist-one.pem"),
            "--trust",
            Path.Combine(example.Keys, "medical-director-one.pem"),
            "--trust-time",
            authority.Certificate,
        ];

        var renewed = await Run.Of(["renew", report, .. trust, "--time-stamp", authority.Address]);
        Assert.True(renewed.Code == ExitCode.Done, renewed.Error);
        Assert.Contains("by Invented Time Authority dates all of it", Run.OneLine(renewed.Out));

        var found = await Run.Of(["verify", report, .. trust]);
        Assert.True(found.Code == ExitCode.VerificationIncomplete, found.Out);
        Assert.Contains("an archive time stamp shows that it was before", Run.OneLine(found.Out));
        Assert.Contains("archive time stamps (1)", Run.OneLine(found.Out));

        var outside = await OutsideTool.Run("pdfsig", "-nocert", report);
        Assert.Equal(2, outside.Out.Split("Signature is Valid").Length - 1);
        Assert.Empty(
            await ArchiveRules.BrokenBy(
                await File.ReadAllBytesAsync(report, TestContext.Current.CancellationToken)
            )
        );
        var structure = await OutsideTool.Run("qpdf", "--check", report);
        Assert.Equal(0, structure.ExitCode);
    }

    [Fact]
    public async Task Without_anybody_to_trust_nothing_is_renewed()
    {
        var before = await File.ReadAllBytesAsync(
            example.WithSignatures,
            TestContext.Current.CancellationToken
        );
        var refused = await Run.Of("renew", example.WithSignatures);

        Assert.Equal(ExitCode.WrongUsage, refused.Code);
        Assert.Contains(
            "give the certificates that you trust with --trust",
            Run.OneLine(refused.Error)
        );
        Assert.Equal(
            before,
            await File.ReadAllBytesAsync(
                example.WithSignatures,
                TestContext.Current.CancellationToken
            )
        );
    }

    /// <summary>A time-stamp authority on this machine (RFC 3161), played by the command <c>openssl ts</c>.</summary>
    private sealed class Authority : IAsyncDisposable
    {
        private readonly HttpListener _listener = new();
        private readonly string _folder;
        private readonly Task _served;

        private Authority(string folder)
        {
            _folder = folder;
            Address = FreeAddress(_listener);
            _served = Serve();
        }

        public string Address { get; }

        public string Certificate => Path.Combine(_folder, "root.pem");

        public static async Task<Authority> Start(string folder)
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllTextAsync(
                Path.Combine(folder, "ts.cnf"),
                """
                [tsa]
                serial = serial
                signer_cert = tsa.pem
                signer_key = tsa.key
                signer_digest = sha256
                default_policy = 1.2.3.4.1
                digests = sha256
                ess_cert_id_alg = sha256
                """
            );
            await Shell(
                folder,
                "echo 01 > serial"
                    + " && openssl req -x509 -newkey rsa:2048 -nodes -keyout root.key -out root.pem -subj '/CN=Invented Time Root' -days 4000"
                    + " -addext keyUsage=critical,keyCertSign,cRLSign"
                    + " && openssl req -newkey rsa:2048 -nodes -keyout tsa.key -out tsa.csr -subj '/CN=Invented Time Authority'"
                    + " && printf 'extendedKeyUsage=critical,timeStamping\nkeyUsage=critical,digitalSignature\n' > ext"
                    + " && openssl x509 -req -in tsa.csr -CA root.pem -CAkey root.key -CAcreateserial -days 3000 -extfile ext -out tsa.pem"
            );
            return new Authority(folder);
        }

        public async ValueTask DisposeAsync()
        {
            _listener.Close();
            await _served;
        }

        private static string FreeAddress(HttpListener listener)
        {
            using var socket = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
            socket.Start();
            var port = ((IPEndPoint)socket.LocalEndpoint).Port;
            socket.Stop();
            var address = FormattableString.Invariant($"http://127.0.0.1:{port}/");
            listener.Prefixes.Add(address);
            listener.Start();
            return address;
        }

        private async Task Serve()
        {
            try
            {
                while (true)
                {
                    var asked = await _listener.GetContextAsync();
                    await using (var query = File.Create(Path.Combine(_folder, "query")))
                    {
                        await asked.Request.InputStream.CopyToAsync(query);
                    }

                    await Shell(
                        _folder,
                        "openssl ts -reply -config ts.cnf -section tsa -queryfile query -out reply"
                    );
                    asked.Response.ContentType = "application/timestamp-reply";
                    asked.Response.Close(
                        await File.ReadAllBytesAsync(Path.Combine(_folder, "reply")),
                        willBlock: false
                    );
                }
            }
            catch (Exception error) when (error is HttpListenerException or ObjectDisposedException)
            {
                // The test has ended.
            }
        }

        private static async Task Shell(string folder, string command)
        {
            var answer = await OutsideTool.Run("sh", "-c", "cd \"$0\" && " + command, folder);
            Assert.True(answer.ExitCode == 0, answer.Error);
        }
    }
}

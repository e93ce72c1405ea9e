using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Tools;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>A time stamp authority (RFC 3161) played by the command <c>openssl ts</c>; it stamps the machine's time.</summary>
internal sealed class TimeStampAuthority : IDisposable
{
    private const string TimeStamping = "1.3.6.1.5.5.7.3.8";
    private readonly TemporaryFolder _folder = new();
    private readonly string _settings;
    private readonly string _digest;

    public TimeStampAuthority(
        Signer? by = null,
        string purpose = TimeStamping,
        string digest = "sha256"
    )
    {
        _digest = digest;
        var signer = Signers.Issue("Trial Time", rsa: true, by: by, purpose: purpose);
        var certificate = _folder.Write("tsa.pem", signer.CertificatePem);
        var key = _folder.Write("tsa-key.pem", signer.KeyPem);
        _folder.Write("serial", "01\n"u8);
        _settings = _folder.Write(
            "ts.cnf",
            System.Text.Encoding.ASCII.GetBytes(
                $"""
                [tsa]
                serial = {_folder.FullName}/serial
                signer_cert = {certificate}
                signer_key = {key}
                signer_digest = sha256
                default_policy = 1.2.3.4.1
                digests = sha256, sha384, sha512
                ess_cert_id_alg = sha256
                """
            )
        );
    }

    public TimeStampSource Source => new(Answer, new byte[] { 0x7A, 2, 3, 4, 5, 6, 7, 8 });

    public ReadOnlyMemory<byte>? Answer(ReadOnlyMemory<byte> request)
    {
        var query = _folder.Write("request.tsq", request.Span);
        var response = Path.Combine(_folder.FullName, "response.tsr");
        var answer = Task.Run(() =>
                OutsideTool.Run(
                    "openssl",
                    "ts",
                    "-reply",
                    "-config",
                    _settings,
                    "-section",
                    "tsa",
                    $"-{_digest}",
                    "-queryfile",
                    query,
                    "-out",
                    response
                )
            )
            .GetAwaiter()
            .GetResult();
        return answer.ExitCode == 0 ? File.ReadAllBytes(response) : null;
    }

    public void Dispose() => _folder.Dispose();
}

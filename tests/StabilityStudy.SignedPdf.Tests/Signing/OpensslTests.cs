using System.Security.Cryptography.Pkcs;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Tools;
using StabilityStudy.SignedPdf.Tests.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>What openssl says about our signatures, time stamps and keys, and we about its keys.</summary>
public sealed class OpensslTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("author")]
    [InlineData("approver")]
    public async Task Openssl_verifies_the_signature_with_its_signing_certificate(string field)
    {
        var file = field is "author" ? SignedDocument.SignedOnce : SignedDocument.SignedTwice;
        var (start, end) = Forgery.Gap(file, field);
        var answer = await OutsideTool.Run(
            "openssl",
            "cms",
            "-verify",
            "-cades",
            "-binary",
            "-inform",
            "DER",
            "-in",
            _folder.Write("signature.der", Forgery.Container(file, field)),
            "-content",
            _folder.Write("content.bin", Forgery.Covered(file, start, end)),
            "-CAfile",
            _folder.Write("trust.pem", Signers.Authority.CertificatePem),
            "-purpose",
            "any",
            "-attime",
            Signers.Time.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture),
            "-out",
            Path.Combine(_folder.FullName, "out.bin")
        );

        Assert.Contains("successful", answer.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(0, answer.ExitCode);
    }

    [Fact]
    public async Task Openssl_verifies_the_time_stamp()
    {
        using var authority = new TimeStampAuthority();
        var file = SignedDocument.Sign(
            SignedDocument.Unsigned,
            SignedDocument.Author with
            {
                TimeStamp = authority.Source,
            }
        );
        var container = new SignedCms();
        container.Decode(Forgery.Container(file, "author"));
        var signer = container.SignerInfos[0];
        var answer = await OutsideTool.Run(
            "openssl",
            "ts",
            "-verify",
            "-token_in",
            "-in",
            _folder.Write("token.der", signer.UnsignedAttributes[0].Values[0].RawData),
            "-data",
            _folder.Write("value.bin", signer.GetSignature()),
            "-CAfile",
            _folder.Write("trust.pem", Signers.Authority.CertificatePem)
        );

        Assert.Contains("Verification: OK", answer.Out + answer.Error, StringComparison.Ordinal);
        Assert.Equal(0, answer.ExitCode);
    }

    [Fact]
    public async Task Openssl_opens_a_trial_certificate()
    {
        var trial = Tests.Certificates.TrialCertificateTests.Create();
        var answer = await OutsideTool.Run(
            "openssl",
            "pkcs12",
            "-in",
            _folder.Write("trial.p12", trial.Pkcs12.Span),
            "-passin",
            $"pass:{Tests.Certificates.TrialCertificateTests.Passphrase}",
            "-nokeys"
        );

        Assert.Equal(0, answer.ExitCode);
        Assert.Contains("Tess Trial", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-maciter")]
    [InlineData("-legacy")]
    public async Task A_key_file_made_by_openssl_is_read(string protection)
    {
        var file = Path.Combine(_folder.FullName, "made.p12");
        var answer = await OutsideTool.Run(
            "openssl",
            "pkcs12",
            "-export",
            protection,
            "-inkey",
            _folder.Write("key.pem", Signers.Author.KeyPem),
            "-in",
            _folder.Write("certificate.pem", Signers.Author.CertificatePem),
            "-certfile",
            _folder.Write("issuer.pem", Signers.Authority.CertificatePem),
            "-passout",
            "pass:open sesame",
            "-out",
            file
        );
        var bytes = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);

        Assert.Equal(0, answer.ExitCode);
        Assert.True(SigningKeyReader.Read(bytes, null, "open sesame").TryGet(out var key, out _));
        Assert.Equal("Ada Author", key.Certificate.Name);
        Assert.False(SigningKeyReader.Read(bytes, null, "wrong").TryGet(out _, out var problem));
        Assert.Equal(SigningKeyProblem.WrongPassphrase, problem);
    }
}

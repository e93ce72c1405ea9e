using System.Security.Cryptography;
using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Signing;

namespace StabilityStudy.SignedPdf.Tests.Certificates;

public static class SigningKeyReaderTests
{
    private static readonly TrialCertificateFiles Trial = TrialCertificateTests.Create();

    public static TheoryData<string> Forms => ["PKCS#12", "PEM in one file", "PEM in two files"];

    [Theory]
    [MemberData(nameof(Forms))]
    public static void A_key_is_read_in_each_form(string form)
    {
        Assert.True(Read(form, TrialCertificateTests.Passphrase).TryGet(out var key, out _));
        Assert.Equal("Tess Trial", key.Certificate.Name);
        Assert.True(key.Certificate.IsSelfIssued);
        Assert.True(
            SignedDocument
                .Verify(
                    SignedDocument.Sign(
                        SignedDocument.Unsigned,
                        SignedDocument.Author with
                        {
                            Key = key,
                        }
                    )
                )
                .Holds
        );
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public static void A_wrong_passphrase_is_told(string form) =>
        AssertProblem(SigningKeyProblem.WrongPassphrase, Read(form, "wrong"));

    [Theory]
    [MemberData(nameof(Forms))]
    public static void A_missing_passphrase_is_told(string form) =>
        AssertProblem(SigningKeyProblem.PassphraseNeeded, Read(form, null));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public static void A_key_without_protection_is_read(bool rsa)
    {
        using var key = Signers.Issue("Paul Plain", rsa).SigningKey();

        Assert.Equal("Paul Plain", key.Certificate.Name);
    }

    [Fact]
    public static void Old_forms_of_a_private_key_are_read()
    {
        foreach (
            var (signer, pem) in new[]
            {
                (Signers.Author, ((RSA)Signers.Author.Key).ExportRSAPrivateKeyPem()),
                (Signers.Approver, ((ECDsa)Signers.Approver.Key).ExportECPrivateKeyPem()),
            }
        )
        {
            Assert.True(
                SigningKeyReader
                    .Read(Encoding.ASCII.GetBytes(pem), signer.CertificatePem, null)
                    .TryGet(out _, out _)
            );
        }
    }

    [Fact]
    public static void A_file_that_is_none_is_told() =>
        AssertProblem(
            SigningKeyProblem.Unreadable,
            SigningKeyReader.Read("nothing"u8.ToArray(), null, "x")
        );

    [Fact]
    public static void A_damaged_certificate_is_told() =>
        AssertProblem(
            SigningKeyProblem.Unreadable,
            SigningKeyReader.Read(
                "-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n"u8.ToArray(),
                null,
                null
            )
        );

    [Fact]
    public static void A_certificate_alone_is_told() =>
        AssertProblem(
            SigningKeyProblem.NoPrivateKey,
            SigningKeyReader.Read(Signers.Author.CertificatePem, null, null)
        );

    [Fact]
    public static void A_key_alone_is_told() =>
        AssertProblem(
            SigningKeyProblem.NoCertificate,
            SigningKeyReader.Read(Signers.Author.KeyPem, null, null)
        );

    [Fact]
    public static void A_key_with_the_certificate_of_another_is_told() =>
        AssertProblem(
            SigningKeyProblem.KeyDoesNotMatch,
            SigningKeyReader.Read(Signers.Author.KeyPem, Signers.Approver.CertificatePem, null)
        );

    [Fact]
    public static void A_short_key_is_told()
    {
        using var rsa = RSA.Create(1024);

        AssertProblem(
            SigningKeyProblem.KeyNotSupported,
            SigningKeyReader.Read(
                Encoding.ASCII.GetBytes(rsa.ExportPkcs8PrivateKeyPem()),
                Signers.Author.CertificatePem,
                null
            )
        );
    }

    private static SigningKeyResult Read(string form, string? passphrase)
    {
        var key = Encoding.ASCII.GetBytes(Trial.KeyPem);
        var certificate = Encoding.ASCII.GetBytes(Trial.CertificatePem);
        return form switch
        {
            "PKCS#12" => SigningKeyReader.Read(Trial.Pkcs12, null, passphrase),
            "PEM in one file" => SigningKeyReader.Read(
                (byte[])[.. certificate, .. key],
                null,
                passphrase
            ),
            _ => SigningKeyReader.Read(key, certificate, passphrase),
        };
    }

    private static void AssertProblem(SigningKeyProblem expected, SigningKeyResult result)
    {
        Assert.False(result.TryGet(out _, out var problem));
        Assert.Equal(expected, problem);
    }
}

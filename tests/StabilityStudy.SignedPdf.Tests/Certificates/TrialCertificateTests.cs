using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Certificates;

public static class TrialCertificateTests
{
    public const string Passphrase = "correct horse";

    private static readonly byte[] Chance = [.. Enumerable.Repeat((byte)0xFF, 16)];

    public static TrialCertificateFiles Create() =>
        TrialCertificate.Create(
            "Tess Trial",
            "Trial laboratory",
            Signers.Start,
            Signers.End,
            Passphrase,
            Chance
        );

    [Fact]
    public static void A_trial_certificate_says_what_it_was_told()
    {
        Assert.True(
            SigningKeyReader.Read(Create().Pkcs12, null, Passphrase).TryGet(out var key, out _)
        );

        Assert.Equal("Tess Trial", key.Certificate.Name);
        Assert.Contains("O=Trial laboratory", key.Certificate.Subject, StringComparison.Ordinal);
        Assert.Equal(
            (Signers.Start, Signers.End),
            (key.Certificate.NotBefore, key.Certificate.NotAfter)
        );
        Assert.True(key.Certificate is { IsSelfIssued: true, MaySign: true });
        Assert.Equal("7F" + new string('F', 30), key.Certificate.SerialNumber);
        Assert.Null(key.Certificate.ProblemAt(Signers.Start));
        Assert.Null(key.Certificate.ProblemAt(Signers.End));
        Assert.Equal(
            SigningKeyProblem.NotYetValid,
            key.Certificate.ProblemAt(Signers.Start.AddSeconds(-1))
        );
        Assert.Equal(
            SigningKeyProblem.Expired,
            key.Certificate.ProblemAt(Signers.End.AddSeconds(1))
        );
    }

    [Fact]
    public static void Its_holder_is_trusted_only_by_those_who_trust_the_certificate_itself()
    {
        var trial = Create();
        Assert.True(
            SigningKeyReader.Read(trial.Pkcs12, null, Passphrase).TryGet(out var key, out _)
        );
        var signed = SignedDocument.Sign(
            SignedDocument.Unsigned,
            SignedDocument.Author with
            {
                Key = key,
            }
        );
        var own = TrustAnchors.Of([
            Rewritten.Value(
                TrustFile.Read(System.Text.Encoding.ASCII.GetBytes(trial.CertificatePem))
            ),
        ]);

        Assert.Equal(
            ChainOutcome.NotTrusted,
            SignedDocument.Verify(signed).Signatures[0].Chain.Outcome
        );
        Assert.Equal(
            ChainOutcome.Trusted,
            SignatureVerifier
                .Verify(signed, new VerificationOptions(own, []))
                .Signatures[0]
                .Chain.Outcome
        );
    }

    [Fact]
    public static void Dates_out_of_order_throw() =>
        Assert.Throws<ArgumentException>(() =>
            TrialCertificate.Create("T", null, Signers.End, Signers.Start, "x", Chance)
        );

    [Fact]
    public static void Too_little_chance_throws() =>
        Assert.Throws<ArgumentException>(() =>
            TrialCertificate.Create("T", null, Signers.Start, Signers.End, "x", Chance.AsMemory(1))
        );

    [Theory]
    [InlineData("", "x")]
    [InlineData("T", "")]
    public static void An_empty_name_or_passphrase_throws(string name, string passphrase) =>
        Assert.Throws<ArgumentException>(() =>
            TrialCertificate.Create(name, null, Signers.Start, Signers.End, passphrase, Chance)
        );
}

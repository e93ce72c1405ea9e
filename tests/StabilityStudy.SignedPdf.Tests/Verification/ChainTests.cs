using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Who vouches for the signers.</summary>
public static class ChainTests
{
    [Fact]
    public static void An_issuer_that_is_not_trusted_is_found()
    {
        var chain = Verify(Signers.Anchors(Signers.OtherAuthority)).Chain;

        Assert.Equal(ChainOutcome.NotTrusted, chain.Outcome);
        Assert.NotEmpty(chain.Faults);
    }

    [Fact]
    public static void A_trusted_chain_names_its_certificates()
    {
        var chain = Verify(Signers.Trust).Chain;

        Assert.Equal(ChainOutcome.Trusted, chain.Outcome);
        Assert.Equal(
            ["Ada Author", "Trial Authority"],
            chain.Certificates.Select(static one => one.Name),
            StringComparer.Ordinal
        );
        Assert.Empty(chain.Faults);
        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
    }

    [Fact]
    public static void A_revoked_certificate_is_found()
    {
        var chain = Verify(Signers.Trust, List(30, Signers.Time.AddDays(-1), Signers.Author)).Chain;

        Assert.Equal(RevocationOutcome.Revoked, chain.Revocation);
        Assert.Equal(Signers.Time.AddDays(-1), chain.RevokedAt);
    }

    [Fact]
    public static void A_later_revocation_counts_when_only_the_signer_says_when_he_signed() =>
        Assert.Equal(
            RevocationOutcome.Revoked,
            Verify(
                Signers.Trust,
                List(30, Signers.Time.AddDays(1), Signers.Author)
            ).Chain.Revocation
        );

    [Fact]
    public static void A_list_without_the_certificate_says_not_revoked() =>
        Assert.Equal(
            RevocationOutcome.NotRevoked,
            Verify(Signers.Trust, List(30, Signers.Time, Signers.Approver)).Chain.Revocation
        );

    [Fact]
    public static void A_list_from_before_the_signature_says_nothing() =>
        Assert.Equal(
            RevocationOutcome.NotChecked,
            Verify(
                Signers.Trust,
                List(-30, Signers.Time.AddDays(-40), Signers.Approver)
            ).Chain.Revocation
        );

    [Fact]
    public static void An_altered_list_says_nothing()
    {
        var bytes = Signers.RevocationListOf(
            Signers.Time.AddDays(30),
            Signers.Time,
            Signers.Approver
        );
        bytes[^1] ^= 1;

        Assert.Equal(
            RevocationOutcome.NotChecked,
            Verify(Signers.Trust, Rewritten.Value(RevocationList.Read(bytes))).Chain.Revocation
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("-----BEGIN CERTIFICATE-----")]
    [InlineData("0\u0003\u0002\u0001\u0005")]
    public static void What_is_no_list_is_refused(string text) =>
        Assert.False(RevocationList.Read(HandMadePdf.Bytes(text)).TryGet(out _, out _));

    private static RevocationList List(int days, DateTimeOffset revoked, Signer signer) =>
        Rewritten.Value(
            RevocationList.Read(
                Signers.RevocationListOf(Signers.Time.AddDays(days), revoked, signer)
            )
        );

    private static SignatureVerification Verify(
        TrustAnchors anchors,
        params RevocationList[] lists
    ) =>
        SignatureVerifier
            .Verify(SignedDocument.SignedOnce, new VerificationOptions(anchors, [.. lists]))
            .Signatures[0];
}

using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>A list shows that a certificate was not revoked only if it is of its issuer, right and of the right time; any other says what is wrong with it.</summary>
public static class RevocationTests
{
    private static readonly DateTimeOffset s_now = Signers.Time.AddDays(10);

    [Fact]
    public static void Without_a_list_that_is_said()
    {
        var chain = Verify();

        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
        var fault = Assert.Single(chain.RevocationFaults);
        Assert.Equal(RevocationListProblem.Missing, fault.Problem);
        Assert.Equal("Ada Author", fault.Certificate.Name);
    }

    [Fact]
    public static void A_current_list_shows_it()
    {
        var chain = Verify(List());

        Assert.Equal(RevocationOutcome.NotRevoked, chain.Revocation);
        Assert.Empty(chain.RevocationFaults);
    }

    [Theory]
    [InlineData(-1, 10, RevocationListProblem.MadeBefore)]
    [InlineData(1, 32, RevocationListProblem.OutOfDate)]
    [InlineData(11, 10, RevocationListProblem.MadeInFuture)]
    public static void A_list_of_another_time_says_so(
        int madeDays,
        int nowDays,
        RevocationListProblem expected
    ) => AssertFault(expected, List(madeDays), Signers.Time.AddDays(nowDays));

    [Fact]
    public static void A_list_from_after_the_end_of_the_certificate_says_so()
    {
        var signer = new CertificateWish("Eva End") { To = Signers.Time.AddDays(1) }.Made();
        var chain = Verify(signer, s_now, List(2));

        Assert.Equal(
            RevocationListProblem.MadeAfterExpiry,
            Assert.Single(chain.RevocationFaults).Problem
        );
        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
    }

    [Fact]
    public static void A_list_of_another_issuer_says_so() =>
        AssertFault(
            RevocationListProblem.OfAnotherIssuer,
            Read(
                Signers.RevocationListBy(
                    Signers.OtherAuthority,
                    null,
                    Signers.Time.AddDays(1),
                    Signers.Time
                )
            ),
            s_now
        );

    [Fact]
    public static void A_list_in_the_name_of_the_issuer_by_another_key_says_so() =>
        AssertFault(
            RevocationListProblem.NotSignedByIssuer,
            By(
                X509SignatureGenerator.CreateForRSA(
                    (RSA)Signers.OtherAuthority.Key,
                    RSASignaturePadding.Pkcs1
                )
            ),
            s_now
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public static void A_list_signed_with_an_old_digest_says_so(bool md5) =>
        AssertFault(
            RevocationListProblem.SignatureNotStrong,
            By(
                md5
                    ? CertificateWish.Md5(Signers.Authority.Key)
                    : CertificateWish.Sha1(Signers.Authority.Key)
            ),
            s_now
        );

    [Fact]
    public static void A_list_signed_with_PSS_is_right() =>
        Assert.Equal(
            RevocationOutcome.NotRevoked,
            Verify(By(CertificateWish.Pss(Signers.Authority.Key))).Revocation
        );

    [Fact]
    public static void Of_lists_that_contradict_each_other_the_worst_holds()
    {
        var clean = List();
        var revoking = List(-5, Signers.Author);

        Assert.Equal(RevocationOutcome.Revoked, Verify(clean, revoking).Revocation);
        Assert.Equal(RevocationOutcome.Revoked, Verify(revoking, clean).Revocation);
    }

    [Fact]
    public static void A_forged_list_beside_a_right_one_is_told()
    {
        var forged = By(
            X509SignatureGenerator.CreateForRSA(
                (RSA)Signers.OtherAuthority.Key,
                RSASignaturePadding.Pkcs1
            )
        );
        var chain = Verify(List(), forged);

        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
        Assert.Equal(
            RevocationListProblem.NotSignedByIssuer,
            Assert.Single(chain.RevocationFaults).Problem
        );
    }

    [Fact]
    public static void A_list_for_another_chain_beside_a_right_one_does_not_matter()
    {
        var other = Read(
            Signers.RevocationListBy(
                Signers.OtherAuthority,
                null,
                Signers.Time.AddDays(1),
                Signers.Time
            )
        );

        Assert.Equal(RevocationOutcome.NotRevoked, Verify(List(), other).Revocation);
    }

    [Fact]
    public static void An_authority_between_that_was_revoked_takes_its_signers_along()
    {
        var between = new CertificateWish("Middle Authority")
        {
            Key = RSA.Create(2048),
            IsAuthority = true,
        }.Made();
        var signer = new CertificateWish("Mia Middle") { By = between }.Made();
        var ofMiddle = Read(
            Signers.RevocationListBy(between, null, Signers.Time.AddDays(1), Signers.Time)
        );

        Assert.Equal(
            RevocationOutcome.Revoked,
            Verify(signer, s_now, between, ofMiddle, List(1, between)).Revocation
        );
        Assert.Equal(
            RevocationOutcome.NotRevoked,
            Verify(signer, s_now, between, ofMiddle, List()).Revocation
        );
        Assert.Equal(
            "Middle Authority",
            Assert
                .Single(Verify(signer, s_now, between, ofMiddle).RevocationFaults)
                .Certificate.Name
        );
    }

    [Fact]
    public static void A_self_issued_certificate_that_is_the_anchor_needs_no_list()
    {
        var own = new CertificateWish("Own Issuer") { By = null }.Made();
        var chain = SignedDocument
            .Verify(
                Forgery.Resigned(SignedDocument.SignedOnce, "author", own, own.Certificate),
                new VerificationOptions(Signers.Anchors(own), [])
            )
            .Signatures[0]
            .Chain;

        Assert.Equal(
            (ChainOutcome.Trusted, RevocationOutcome.NotNeeded),
            (chain.Outcome, chain.Revocation)
        );
        Assert.Empty(chain.RevocationFaults);
    }

    private static void AssertFault(
        RevocationListProblem expected,
        RevocationList list,
        DateTimeOffset now
    )
    {
        var chain = Verify(Signers.Author, now, list);

        Assert.Equal(ChainOutcome.Trusted, chain.Outcome);
        Assert.Equal(RevocationOutcome.NotChecked, chain.Revocation);
        var fault = Assert.Single(chain.RevocationFaults);
        Assert.Equal((expected, list), (fault.Problem, fault.List));
    }

    private static RevocationList List(int days = 1, params Signer[] revoked) =>
        Read(Signers.RevocationListOf(Signers.Time.AddDays(days), Signers.Time, revoked));

    private static RevocationList By(X509SignatureGenerator method) =>
        Read(
            Signers.RevocationListBy(
                Signers.Authority,
                method,
                Signers.Time.AddDays(1),
                Signers.Time
            )
        );

    private static RevocationList Read(byte[] list) => Rewritten.Value(RevocationList.Read(list));

    private static ChainVerification Verify(params RevocationList[] lists) =>
        Verify(Signers.Author, s_now, lists);

    private static ChainVerification Verify(
        Signer signer,
        DateTimeOffset now,
        params RevocationList[] lists
    ) => Verify(signer, now, Signers.Authority, lists);

    private static ChainVerification Verify(
        Signer signer,
        DateTimeOffset now,
        Signer between,
        params RevocationList[] lists
    ) =>
        Forgery
            .AsAuthor(
                signer,
                new VerificationOptions(Signers.Trust, [.. lists]) { Now = now },
                by => by.Certificates.Add(between.Certificate)
            )
            .Chain;
}

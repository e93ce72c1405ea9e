using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Who vouches for signers does not vouch for the time, and nothing is signed in the future.</summary>
public static class TrustedTimeTests
{
    private static readonly DateTimeOffset s_stamped = Signers.Time.AddMinutes(1);

    private static readonly Signer s_timeRoot = new CertificateWish("Time Root")
    {
        By = null,
        Key = System.Security.Cryptography.RSA.Create(2048),
        IsAuthority = true,
    }.Made();

    private static readonly HandMadeStamp s_stamp = new(s_stamped)
    {
        Authority = new CertificateWish("Invented Time")
        {
            By = s_timeRoot,
            Purposes = [HandMadeStamp.TimeStamping],
        }.Made(),
    };

    [Fact]
    public static void Without_anchors_for_it_an_authority_is_not_checked_whoever_vouches_for_signers()
    {
        var own = new HandMadeStamp(s_stamped);
        var signature = Verify(own, new VerificationOptions(Signers.Trust, []));

        Assert.Equal(ChainOutcome.Trusted, signature.Chain.Outcome);
        Assert.Equal(ChainOutcome.NotChecked, signature.TimeStamp?.Chain.Outcome);
        Assert.Null(signature.TimeStamp?.ProvenTime);
    }

    [Fact]
    public static void An_anchor_of_signers_does_not_vouch_for_an_authority_of_time()
    {
        var own = new HandMadeStamp(s_stamped);
        var time = Signers.Anchors(s_timeRoot);
        var signature = Verify(own, new(Signers.Trust, []) { TimeAnchors = time });

        Assert.Equal(ChainOutcome.Trusted, signature.Chain.Outcome);
        Assert.Equal(ChainOutcome.NotTrusted, signature.TimeStamp?.Chain.Outcome);
    }

    [Fact]
    public static void An_anchor_of_time_does_not_vouch_for_signers()
    {
        var time = Signers.Anchors(s_timeRoot);
        var signature = Verify(s_stamp, new(time, []) { TimeAnchors = time });

        Assert.Equal(ChainOutcome.NotTrusted, signature.Chain.Outcome);
        Assert.Equal(s_stamped, signature.TimeStamp?.ProvenTime);
    }

    [Theory]
    [InlineData(-6, false)]
    [InlineData(-4, true)]
    [InlineData(600, true)]
    public static void No_signature_is_of_the_future(int minutes, bool holds)
    {
        var signature = SignedDocument
            .Verify(
                SignedDocument.SignedOnce,
                Signers.Trusting with
                {
                    Now = Signers.Time.AddMinutes(minutes),
                }
            )
            .Signatures[0];

        Assert.Equal(holds ? [] : [SignatureProblem.DatedInFuture], signature.Problems);
    }

    [Fact]
    public static void A_trusted_time_stamp_is_not_of_the_future()
    {
        var options = Signers.Trusting with { Now = s_stamped.AddDays(1) };
        var late = new HandMadeStamp(s_stamped.AddDays(2));

        Assert.Empty(Verify(new HandMadeStamp(s_stamped), options).Problems);
        Assert.Equal([SignatureProblem.DatedInFuture], Verify(late, options).Problems);
    }

    [Fact]
    public static void A_signature_is_not_dated_after_its_time_stamp() =>
        Assert.Equal(
            [SignatureProblem.TimeStampBeforeSigning],
            Verify(new HandMadeStamp(Signers.Time.AddMinutes(-6)), Signers.Trusting).Problems
        );

    [Fact]
    public static void What_a_revoked_authority_stamped_proves_no_time()
    {
        var list = Drawing.Rewritten.Value(
            RevocationList.Read(
                Signers.RevocationListOf(
                    s_stamped.AddDays(2),
                    s_stamped.AddDays(1),
                    HandMadeStamp.DefaultAuthority
                )
            )
        );
        var stamp = Verify(
            new HandMadeStamp(s_stamped),
            Signers.Trusting with
            {
                RevocationLists = [list],
            }
        ).TimeStamp;

        Assert.Equal(RevocationOutcome.Revoked, stamp?.Chain.Revocation);
        Assert.Null(stamp?.ProvenTime);
    }

    private static SignatureVerification Verify(HandMadeStamp stamp, VerificationOptions options) =>
        Forgery.AsAuthor(Signers.Author, options, after: stamp.On);
}

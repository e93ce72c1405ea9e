using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A time of signing that no trusted authority stamped is the signer's claim, and verify calls it that.</summary>
[Trait("lane", "slow")]
public sealed class TimeWordsTests
{
    private const string Claim = "that time is the signer's claim";

    private static DocumentVerification Found { get; } =
        SignatureVerifier.Verify(EvidenceExample.SignedOnce, EvidenceExample.Trusting);

    private static ChainVerification Trusted => Found.Signatures[0].Chain;

    [Fact]
    public void A_stamp_whose_authority_is_not_checked_leaves_a_claim()
    {
        var part = Part(
            Trusted with
            {
                Outcome = ChainOutcome.NotChecked,
                Revocation = RevocationOutcome.NotChecked,
            }
        );

        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        AssertSaid(part, Claim);
        AssertSaid(
            part,
            "the certificate of the time-stamp authority Invented Time is not checked, because no trust store for time-stamp authorities was given (--trust-time); its time counts as claimed only"
        );
    }

    [Fact]
    public void A_stamp_whose_authority_is_not_trusted_leaves_a_claim()
    {
        var part = Part(
            Trusted with
            {
                Outcome = ChainOutcome.NotTrusted,
                Faults = [new(ChainProblem.IssuerMissing, Trusted.Certificates[0])],
            }
        );

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        AssertSaid(part, Claim);
        AssertSaid(part, "is not trusted by the given trust store for time-stamp authorities");
    }

    [Fact]
    public void A_revoked_authority_fails_and_leaves_a_claim()
    {
        var part = Part(Trusted with { Revocation = RevocationOutcome.Revoked });

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        AssertSaid(part, Claim);
        AssertSaid(part, "was revoked");
    }

    [Fact]
    public void A_trusted_stamp_shows_the_time_even_when_the_certificate_of_the_signer_is_over()
    {
        var after = EvidenceExample.Now.AddDays(301);
        var shown = Part(Trusted with { Certificates = [] }, after);

        Assert.DoesNotContain(
            shown.Sentences,
            text => text.Contains(Claim, StringComparison.Ordinal)
        );
        AssertSaid(shown, "time-stamped 2026-06-01 10:31:00 -05:00 by Invented Time");
        Assert.DoesNotContain(
            shown.Sentences,
            text => text.Contains("claimed time only", StringComparison.Ordinal)
        );
    }

    private static void AssertSaid(VerifiedPart part, string text) =>
        Assert.Contains(
            part.Sentences,
            sentence => sentence.Contains(text, StringComparison.Ordinal)
        );

    /// <summary>The first part, as it would be with a time stamp of which this is known.</summary>
    private static VerifiedPart Part(ChainVerification chain, DateTimeOffset? now = null)
    {
        var signature = Found.Signatures[0];
        var stamped = signature with
        {
            TimeStamp = new(
                EvidenceExample.Now.AddMinutes(1),
                signature.Signer! with
                {
                    Name = "Invented Time",
                    NotAfter = EvidenceExample.Now.AddYears(10),
                },
                chain
            ),
        };
        return SignaturePart.Of(
            EvidenceExample.SignedOnce,
            Found with
            {
                Signatures = [stamped],
                EmptyFields = [],
            },
            subject: null,
            madeBy: null,
            EvidenceExample.Trusting with
            {
                Now = now,
            }
        );
    }
}

using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>What a renewal keeps, and what it refuses in words.</summary>
[Trait("lane", "slow")]
public sealed class ReportRenewalTests
{
    private static readonly TimeStampSource s_silent = new(_ => null, new byte[8]);

    [Fact]
    public void Certificates_are_kept_and_the_report_still_verifies()
    {
        var done = Assert.IsType<RenewalAttempt.Done>(
            ReportRenewal.Renew(EvidenceExample.SignedTwice, EvidenceExample.Trusting, null)
        );
        var found = EvidenceExample.Verify(done.Report);

        Assert.Contains(
            "are kept in the report",
            Assert.Single(done.Added),
            StringComparison.Ordinal
        );
        Assert.Equal(PartOutcome.Holds, found.Outcome);
        Assert.Contains(
            "additions of certificates and of lists of revoked ones (1)",
            found.Parts[1].Sentences[0],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_further_signature_may_follow_a_renewal()
    {
        var done = Assert.IsType<RenewalAttempt.Done>(
            ReportRenewal.Renew(EvidenceExample.SignedOnce, EvidenceExample.Trusting, null)
        );
        var signed = EvidenceExample.Signed(
            done.Report,
            "approver",
            EvidenceExample.Director,
            DecisionRequest.Approval
        );

        Assert.Equal(PartOutcome.Holds, EvidenceExample.Verify(signed).Outcome);
    }

    [Fact]
    public void What_cannot_be_renewed_says_why()
    {
        Refuses(
            EvidenceExample.Unsigned,
            EvidenceExample.Trusting,
            null,
            "The report does not verify."
        );
        Refuses(
            EvidenceExample.SignedTwice,
            EvidenceExample.WithoutTrust,
            null,
            "give the certificates that you trust with --trust"
        );
        Refuses(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting,
            s_silent,
            "The time-stamp authority gave no answer."
        );
        var changed = EvidenceExample.SignedTwice.ToArray();
        changed[changed.Length / 2] ^= 1;
        Refuses(changed, EvidenceExample.Trusting, null, "nothing makes it better");
    }

    private static void Refuses(
        ReadOnlyMemory<byte> report,
        VerificationOptions options,
        TimeStampSource? source,
        string words
    ) =>
        Assert.Contains(
            words,
            Assert.IsType<RenewalAttempt.Refused>(ReportRenewal.Renew(report, options, source)).Why,
            StringComparison.Ordinal
        );
}

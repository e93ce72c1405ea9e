using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A signed lock is worth as much as its signer: verify asks whom the trust store vouches for.</summary>
[Trait("lane", "slow")]
public sealed class LockTrustTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void A_signer_in_the_trust_store_is_trusted()
    {
        var part = Lock(EvidenceExample.Trusting);

        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Assert.Contains("is trusted by the given trust store", part.Sentences[1], Comparison);
    }

    [Fact]
    public void Without_a_trust_store_it_is_not_checked()
    {
        var part = Lock(EvidenceExample.WithoutTrust);

        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        Assert.Contains("no trust store was given", part.Sentences[0], Comparison);
    }

    [Fact]
    public void A_signer_whom_nobody_vouches_for_fails()
    {
        var part = Lock(
            EvidenceExample.Trusting with
            {
                Anchors = EvidenceExample.Anchors(EvidenceExample.Director.Certificate),
            }
        );

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(
            "Lab Scientist One, who signed lock 1, does not lead to the given trust store",
            part.Sentences[0],
            Comparison
        );
    }

    [Fact]
    public void A_signature_that_is_not_right_is_worse_than_none()
    {
        var report = EvidenceExample.Report(
            EvidenceExample.StudyFiles.Edited(LockFile.Name, "by = \"LS1\"", "by = \"MD1\"")
        );
        var part = ReportVerifier.Verify(report, EvidenceExample.Trusting).Parts[3];

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains("does not fit it", part.Sentences[0], Comparison);
    }

    [Fact]
    public void What_the_record_says_against_the_lock_fails_here_too()
    {
        var files = EvidenceExample.LockedByClock.With(
            StudyRecord.Name,
            StudyRecord.Next(
                default,
                new RecordEntry(
                    RecordAction.Lock,
                    EvidenceExample.Now,
                    "LS1",
                    "stability-study",
                    [],
                    [new FileHash(LockFile.Name, "another")]
                )
            )
        );
        var part = ReportVerifier
            .Verify(EvidenceExample.Report(files), EvidenceExample.Trusting)
            .Parts[3];

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains("is not the file that the record", part.Sentences[0], Comparison);
    }

    [Fact]
    public void Nobody_locks_with_a_clock_behind_the_last_lock()
    {
        var attempt = ProtocolLocking.Lock(
            EvidenceExample.StudyFiles.Edited("protocol.toml", "percent = 8.0", "percent = 8.1"),
            "LS1",
            EvidenceExample.LockedAt.AddMinutes(-1),
            "a limit was corrected"
        );

        Assert.Equal(LockRefusal.BeforeLastLock, Assert.IsType<LockAttempt.Refused>(attempt).Why);
    }

    private static VerifiedPart Lock(VerificationOptions options) =>
        ReportVerifier.Verify(EvidenceExample.Unsigned, options).Parts[3];
}

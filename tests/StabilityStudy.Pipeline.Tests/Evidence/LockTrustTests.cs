using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A signed lock is worth as much as its signer: verify asks whom the trust store vouches for.</summary>
public sealed class LockTrustTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly Lazy<ReadOnlyMemory<byte>> s_report = new(SignedLockReport);

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
        var part = Lock(VerificationOptions.WithoutTrust);

        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        Assert.Contains("no trust store was given", part.Sentences[0], Comparison);
    }

    [Fact]
    public void A_signer_whom_nobody_vouches_for_fails()
    {
        var part = Lock(new(EvidenceExample.Anchors(EvidenceExample.Director.Certificate), []));

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(
            "Lab Scientist One, who signed the lock, does not lead to the given trust store",
            part.Sentences[0],
            Comparison
        );
    }

    private static VerifiedPart Lock(VerificationOptions options) =>
        ReportVerifier.Verify(s_report.Value, options).Parts[3];

    private static ReadOnlyMemory<byte> SignedLockReport()
    {
        using var key = EvidenceExample.Author.Key();
        var files = new StudyBytes(EvidenceExample.StudyFiles.Files.Remove(LockFile.Name));
        var attempt = ProtocolLocking.Lock(
            files,
            "LS1",
            new DateTimeOffset(2026, 5, 1, 13, 20, 0, TimeSpan.FromHours(-5)),
            reason: null,
            key
        );
        var locked = Assert.IsType<LockAttempt.Locked>(attempt);
        return EvidenceExample.Report(new(files.Files.Add(LockFile.Name, locked.LockFile)));
    }
}

using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>The three main status indications of ETSI EN 319 102-1, clause 5.1.3 (the words from memory).</summary>
[Trait("lane", "slow")]
public sealed class ValidationIndicationTests
{
    [Fact]
    public void Each_outcome_has_its_word()
    {
        Assert.Null(Of(EvidenceExample.Unsigned, EvidenceExample.Trusting));
        Assert.Equal("TOTAL-PASSED", Of(EvidenceExample.SignedTwice, EvidenceExample.Trusting));
        Assert.Equal(
            "INDETERMINATE",
            Of(EvidenceExample.SignedTwice, EvidenceExample.WithoutTrust)
        );
        Assert.Equal(
            "INDETERMINATE",
            Of(
                EvidenceExample.SignedTwice,
                EvidenceExample.Trusting with
                {
                    Anchors = EvidenceExample.Anchors(EvidenceExample.Author.Certificate),
                }
            )
        );
        var changed = EvidenceExample.SignedTwice.ToArray();
        changed[changed.Length / 2] ^= 1;
        Assert.Equal("TOTAL-FAILED", Of(changed, EvidenceExample.Trusting));
    }

    private static string? Of(ReadOnlyMemory<byte> report, VerificationOptions options) =>
        ReportVerifier.Verify(report, options).Indication;
}

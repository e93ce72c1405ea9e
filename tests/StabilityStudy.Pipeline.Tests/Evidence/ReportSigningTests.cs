using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Who may sign what, and when.</summary>
[Trait("lane", "slow")]
public sealed class ReportSigningTests
{
    private static readonly DecisionRequest s_approval = DecisionRequest.Approval;

    private static string Why(SigningAttempt attempt) =>
        Assert.IsType<SigningAttempt.Refused>(attempt).Why;

    [Fact]
    public void The_author_signs_first_and_the_approver_is_still_missing()
    {
        var done = Assert.IsType<SigningAttempt.Done>(
            EvidenceExample.Sign(EvidenceExample.Unsigned, "author", EvidenceExample.Author)
        );

        Assert.False(done.SignedBefore);
        Assert.Equal(["approver"], done.StillMissing);
        Assert.True(
            done.Report.Span[..EvidenceExample.Unsigned.Length]
                .SequenceEqual(EvidenceExample.Unsigned.Span)
        );
    }

    [Fact]
    public void The_approver_does_not_sign_before_the_author() =>
        Assert.Equal(
            "The author signs before the approver.",
            Why(
                EvidenceExample.Sign(
                    EvidenceExample.Unsigned,
                    "approver",
                    EvidenceExample.Director,
                    s_approval
                )
            )
        );

    [Fact]
    public void Nobody_signs_twice_in_one_role() =>
        Assert.Equal(
            "The author has signed already.",
            Why(
                EvidenceExample.Sign(EvidenceExample.SignedOnce, "author", EvidenceExample.Director)
            )
        );

    [Fact]
    public void One_person_does_not_sign_in_two_roles() =>
        Assert.Contains(
            "Another person signs as approver",
            Why(
                EvidenceExample.Sign(
                    EvidenceExample.SignedOnce,
                    "approver",
                    EvidenceExample.Author,
                    s_approval
                )
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_role_that_the_protocol_does_not_name_is_answered_with_its_roles() =>
        Assert.Equal(
            "The protocol names no role \"director\". Its roles: author, approver.",
            Why(
                EvidenceExample.Sign(EvidenceExample.Unsigned, "director", EvidenceExample.Director)
            )
        );

    [Fact]
    public void The_approver_has_to_decide() =>
        Assert.Contains(
            "--decision",
            Why(
                EvidenceExample.Sign(
                    EvidenceExample.SignedOnce,
                    "approver",
                    EvidenceExample.Director
                )
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_author_does_not_decide() =>
        Assert.Contains(
            "does not decide",
            Why(
                EvidenceExample.Sign(
                    EvidenceExample.Unsigned,
                    "author",
                    EvidenceExample.Author,
                    s_approval
                )
            ),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(-2, "not valid yet")]
    [InlineData(301, "no longer valid")]
    public void A_certificate_that_is_not_valid_now_does_not_sign(int days, string expected) =>
        Assert.Contains(
            expected,
            Why(
                EvidenceExample.Sign(
                    EvidenceExample.Unsigned,
                    "author",
                    Signer.Make("Lab Scientist One", from: EvidenceExample.Now.AddDays(-1)),
                    at: EvidenceExample.Now.AddDays(days)
                )
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_file_that_is_no_report_is_not_signed() =>
        Assert.Contains(
            "cannot be read",
            Why(
                EvidenceExample.Sign(
                    "%PDF-1.7 nothing"u8.ToArray(),
                    "author",
                    EvidenceExample.Author
                )
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_report_whose_signature_was_damaged_is_not_signed_further()
    {
        var damaged = EvidenceExample.SignedOnce.ToArray();
        damaged[^40_000] ^= 1;

        Assert.IsType<SigningAttempt.Refused>(
            EvidenceExample.Sign(damaged, "approver", EvidenceExample.Director, s_approval)
        );
    }
}

using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Who may sign what, and when.</summary>
[Trait("lane", "slow")]
public sealed class ReportSigningTests
{
    private static readonly ApproverDecision s_approval = new(DecisionKind.Approve, null);

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
    [InlineData(DecisionKind.Conditions, null)]
    [InlineData(DecisionKind.Decline, null)]
    [InlineData(DecisionKind.Approve, "8 h only")]
    public void A_decision_has_a_text_exactly_when_it_is_no_plain_approval(
        DecisionKind kind,
        string? text
    ) =>
        Assert.IsType<SigningAttempt.Refused>(
            EvidenceExample.Sign(
                EvidenceExample.SignedOnce,
                "approver",
                EvidenceExample.Director,
                new ApproverDecision(kind, text)
            )
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

    [Fact]
    public void The_statement_of_a_signature_is_read_again()
    {
        var statement = new SignedStatement(
            "approver",
            "MD \"x\"",
            new ApproverDecision(DecisionKind.Conditions, "6 h only"),
            "ab",
            "0.3.0",
            ["the pages"]
        );
        var json = statement.ToJson();

        Assert.Equal(
            json,
            Assert.IsType<StatementReading.Read>(SignedStatement.Read(json)).Statement.ToJson()
        );
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("no JSON")]
    [InlineData(null)]
    [InlineData("\"role\"", "\"role\":\"x\",\"role\"")]
    [InlineData("\"role\"", "\"more\":1,\"role\"")]
    [InlineData("\"conditions\"", "\"perhaps\"")]
    [InlineData("\"format\":1,", "")]
    [InlineData(":\"ab\"", ": \"ab\"")]
    public void A_statement_of_another_form_is_malformed(string? from, string? to = null)
    {
        var json = new SignedStatement(
            "approver",
            null,
            new ApproverDecision(DecisionKind.Conditions, "6 h only"),
            "ab",
            "0.3.0",
            []
        ).ToJson();
        var text = to is null ? from : json.Replace(from!, to, StringComparison.Ordinal);

        Assert.NotEqual(json, text);
        Assert.IsType<StatementReading.Malformed>(SignedStatement.Read(text));
    }

    [Fact]
    public void A_statement_of_a_later_version_is_said_to_be_one() =>
        Assert.IsType<StatementReading.OfLaterVersion>(
            SignedStatement.Read("{\"format\":2,\"signatory\":\"approver\"}")
        );
}

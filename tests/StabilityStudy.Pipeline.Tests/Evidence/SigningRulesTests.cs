using StabilityStudy.Core.Analysis;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Right signatures of trusted people, put where the program itself would refuse them.</summary>
public sealed class SigningRulesTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly Lazy<(
        StudyAnalysis Analysis,
        SignatureVerification[] Signatures
    )> s_signed = new(() =>
    {
        Assert.True(AttachedStudy.TryRead(EvidenceExample.SignedTwice, out var study, out _));
        return (
            Recomputation.Of(study).Recomputed!,
            [
                .. SignatureVerifier
                    .Verify(EvidenceExample.SignedTwice, EvidenceExample.Trusting)
                    .Signatures,
            ]
        );
    });

    private static SignatureVerification Author => s_signed.Value.Signatures[0];

    private static SignatureVerification Approver => s_signed.Value.Signatures[1];

    private static StudyAnalysis Analysis => s_signed.Value.Analysis;

    /// <summary>What the rules say of a signature, made now or at another time, that states what it does or something else.</summary>
    private static (PartOutcome Outcome, string What)[] Of(
        SignatureVerification signature,
        Func<SignedStatement, SignedStatement>? change = null,
        SignedSubject? of = null
    )
    {
        var subject = of ?? SignedSubject.Of(Analysis);
        var statement = Assert
            .IsType<StatementReading.Read>(SignedStatement.Read(signature.Statement))
            .Statement;
        return
        [
            .. SigningRules.OfSigner(signature, subject),
            .. SigningRules.OfStatement(
                signature,
                change is null ? statement : change(statement),
                subject
            ),
        ];
    }

    [Fact]
    public void What_the_program_signed_breaks_no_rule()
    {
        Assert.Empty(Of(Author));
        Assert.Empty(Of(Approver));
        Assert.Empty(SigningRules.Beside(Approver, [Author]));
    }

    [Fact]
    public void Another_role_or_a_field_of_nobody_fails()
    {
        Fails(
            Of(Author, statement => statement with { Role = "approver" }),
            "in the place of the author"
        );
        Fails(Of(Author with { FieldName = "signatory9" }), "no signatory");
    }

    [Fact]
    public void Only_the_one_who_decides_decides_and_says_why()
    {
        var approve = new ApproverDecision(DecisionKind.Approve, null);
        Fails(Of(Author, statement => statement with { Decision = approve }), "does not decide");
        Fails(Of(Approver, statement => statement with { Decision = null }), "states no decision");
        Fails(
            Of(
                Approver,
                statement =>
                    statement with
                    {
                        Decision = statement.Decision! with { Reason = "to 40 h" },
                    }
            ),
            "to 40 h"
        );
        Fails(
            Of(
                Approver,
                statement =>
                    statement with
                    {
                        Format = SignedStatement.FormatWithoutRows,
                        Decision = new(DecisionKind.Decline, null),
                    }
            ),
            "without saying"
        );
    }

    [Fact]
    public void Nothing_is_approved_that_the_data_do_not_support()
    {
        static SignedStatement Approving(SignedStatement statement, TimeSpan supported) =>
            statement with
            {
                Decision = statement.Decision! with
                {
                    Windows =
                    [
                        .. statement.Decision.Windows.Select(window =>
                            window with
                            {
                                Row = window.Row with { Supported = supported },
                                Approved = TimeSpan.FromHours(40),
                            }
                        ),
                    ],
                },
            };
        var supported = ConcludedWindow.Of(s_signed.Value.Analysis)[0].Supported!.Value;

        Fails(
            Of(Approver, statement => Approving(statement, supported)),
            "longer than the data in the report support"
        );
        Fails(
            Of(Approver, statement => Approving(statement, TimeSpan.FromHours(40))),
            "are not those that the data in the report conclude"
        );

        // The rows of other rules are no fault of whoever decided; what no rules allow still is.
        var underOtherRules = SignedSubject.Of(Analysis) with
        {
            HasOtherRows = true,
        };
        var finding = Assert.Single(
            Of(Approver, statement => Approving(statement, TimeSpan.FromHours(40)), underOtherRules)
        );
        Assert.Equal(PartOutcome.NotChecked, finding.Outcome);
        Assert.Contains("could not be compared", finding.What, StringComparison.Ordinal);
        Fails(
            Of(Approver, statement => statement with { Decision = null }, underOtherRules),
            "states no decision"
        );
    }

    [Fact]
    public void A_signature_older_than_the_last_result_fails()
    {
        var last = SigningRules.LastResult(Analysis)!.Value;

        Assert.Empty(Of(Author with { ClaimedTime = last }));
        Fails(Of(Author with { ClaimedTime = last.AddMinutes(-1) }), "before the last result");
    }

    [Fact]
    public void A_meaning_other_than_that_of_the_protocol_fails() =>
        Fails(Of(Author with { Reason = "author: looked at it" }), "author: ran this study");

    [Fact]
    public void A_signature_before_its_turn_fails()
    {
        Assert.Empty(SigningRules.OutOfTurn(Author, [], Analysis.Protocol.Signatories));
        Assert.Empty(SigningRules.OutOfTurn(Approver, [Author], Analysis.Protocol.Signatories));
        Fails(
            [.. SigningRules.OutOfTurn(Approver, [], Analysis.Protocol.Signatories)],
            "the author signs before the approver"
        );
    }

    [Fact]
    public void A_name_that_the_study_does_not_know_is_said()
    {
        var found = Assert.Single(
            Of(
                Author with
                {
                    SignerName = "Somebody Else",
                    Signer = Author.Signer! with { Name = "Somebody Else" },
                }
            )
        );

        Assert.Equal(PartOutcome.Holds, found.Outcome);
        Assert.Contains("not among the people of study.toml", found.What, Comparison);
    }

    [Fact]
    public void A_printed_name_that_the_certificate_does_not_have_is_said()
    {
        var found = Assert.Single(Of(Author with { SignerName = "Medical Director One" }));

        Assert.Equal(PartOutcome.NotChecked, found.Outcome);
        Assert.Contains("the certificate of Lab Scientist One", found.What, Comparison);
    }

    [Fact]
    public void One_key_or_one_name_for_two_roles_is_told()
    {
        Fails(
            [
                .. SigningRules.Beside(
                    Approver with
                    {
                        Signer = Approver.Signer! with
                        {
                            PublicKeySha256 = Author.Signer!.PublicKeySha256,
                        },
                    },
                    [Author]
                ),
            ],
            "two people must"
        );
        var sameName = Assert.Single(
            SigningRules.Beside(
                Approver with
                {
                    Signer = Approver.Signer! with { Name = Author.Signer!.Name },
                },
                [Author]
            )
        );
        Assert.Equal(PartOutcome.NotChecked, sameName.Outcome);
    }

    [Fact]
    public void A_signature_that_claims_to_be_older_than_the_one_before_is_told() =>
        Assert.Equal(
            PartOutcome.NotChecked,
            Assert
                .Single(
                    SigningRules.Beside(
                        Approver with
                        {
                            ClaimedTime = Author.ClaimedTime!.Value.AddDays(-1),
                        },
                        [Author]
                    )
                )
                .Outcome
        );

    [Fact]
    public void Nobody_signs_results_of_a_time_that_has_not_come()
    {
        var last = SigningRules.LastResult(s_signed.Value.Analysis)!.Value;
        var attempt = EvidenceExample.Sign(
            EvidenceExample.Unsigned,
            "author",
            EvidenceExample.Author,
            at: last.AddMinutes(-1)
        );

        Assert.Contains(
            "after the time of this computer's clock",
            Assert.IsType<SigningAttempt.Refused>(attempt).Why,
            Comparison
        );
    }

    private static void Fails((PartOutcome Outcome, string What)[] found, string expected)
    {
        var finding = Assert.Single(found);
        Assert.Equal(PartOutcome.Fails, finding.Outcome);
        Assert.Contains(expected, finding.What, Comparison);
    }
}

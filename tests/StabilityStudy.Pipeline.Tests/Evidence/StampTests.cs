using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A right signature over a stamp that says something else than what was signed.</summary>
[Trait("lane", "slow")]
public sealed class StampTests
{
    private const string Says = "the stamp on the page says what was signed";
    private const string Lies = "is not what was signed";

    [Fact]
    public void The_stamps_of_the_program_say_what_was_signed() =>
        Assert.Equal(
            2,
            Signatures(EvidenceExample.SignedTwice)
                .Sentences.Count(item => item.Contains(Says, StringComparison.Ordinal))
        );

    [Fact]
    public void A_stamp_that_approves_what_is_declined_fails()
    {
        var declined = SignedBy("Decision: declined: the runs are too few", name: null);
        var approved = SignedBy("Decision: approved", name: null);
        var other = SignedBy("Decision: declined: the runs are too few", name: "Somebody Else");

        Assert.DoesNotContain(
            declined.Sentences,
            item => item.Contains(Lies, StringComparison.Ordinal)
        );
        Assert.Equal(PartOutcome.Fails, approved.Outcome);
        Assert.Contains(approved.Sentences, item => item.Contains(Lies, StringComparison.Ordinal));
        Assert.Contains(other.Sentences, item => item.Contains(Lies, StringComparison.Ordinal));
    }

    /// <summary>The director declines, and signs with a stamp of these words.</summary>
    private static VerifiedPart SignedBy(string decision, string? name) =>
        Signatures(Declined(decision, name));

    /// <summary>Whatever the stamp says, the decision that was signed is stated.</summary>
    [Fact]
    public void The_decision_is_the_one_that_was_signed()
    {
        Assert.StartsWith(
            "Decision: declined: the runs are too few (",
            ReportVerifier
                .Verify(Declined("Decision: approved", name: null), EvidenceExample.Trusting)
                .Decision!.Headline,
            StringComparison.Ordinal
        );
        Assert.Null(
            ReportVerifier.Verify(EvidenceExample.SignedOnce, EvidenceExample.Trusting).Decision
        );
    }

    private static ReadOnlyMemory<byte> Declined(string decision, string? name)
    {
        using var key = EvidenceExample.Director.Key();
        var signed = SignatureVerifier
            .Verify(EvidenceExample.SignedTwice, EvidenceExample.Trusting)
            .Signatures[1];
        var statement = Assert
            .IsType<StatementReading.Read>(SignedStatement.Read(signed.Statement))
            .Statement with
        {
            Decision = Nothing(signed.Statement, "the runs are too few"),
        };
        Assert.True(AttachedStudy.TryRead(EvidenceExample.SignedOnce, out var study, out _));
        var protocol = Recomputation.Of(study).Recomputed!.Protocol;
        var right = StampLines.Stamp(
            protocol,
            protocol.Signatories[1],
            name ?? signed.SignerName!,
            EvidenceExample.Now,
            statement,
            key.Certificate,
            PdfSigner.PlaceOf(EvidenceExample.SignedOnce, signed.FieldName)!,
            PdfSigner.AreasOf(EvidenceExample.SignedOnce, signed.FieldName)
        );
        var result = PdfSigner.Prepare(
            EvidenceExample.SignedOnce,
            new SignatureContent(
                signed.FieldName,
                EvidenceExample.Now,
                signed.SignerName!,
                signed.Reason!,
                null,
                statement.ToJson(),
                right with
                {
                    Lines =
                    [
                        .. right.Lines.Select(line =>
                            line.Text == DecisionWords.Headline(statement.Decision!)
                                ? line with
                                {
                                    Text = decision,
                                }
                                : line
                        ),
                    ],
                }
            ),
            key.Certificate
        );
        Assert.True(result.TryGet(out var prepared, out _));
        Assert.True(
            PdfSigner.Sign(prepared, key, null).TryGet(out var file, out var refusal),
            refusal?.ToString()
        );
        return file;
    }

    /// <summary>The decision of a statement with every window taken away.</summary>
    private static ApproverDecision Nothing(string? statement, string reason) =>
        new(DecisionKind.Decline, reason)
        {
            Windows =
            [
                .. Assert
                    .IsType<StatementReading.Read>(SignedStatement.Read(statement))
                    .Statement.Decision!.Windows.Select(window => window with { Approved = null }),
            ],
        };

    private static VerifiedPart Signatures(ReadOnlyMemory<byte> report) =>
        ReportVerifier.Verify(report, EvidenceExample.Trusting).Parts[0];
}

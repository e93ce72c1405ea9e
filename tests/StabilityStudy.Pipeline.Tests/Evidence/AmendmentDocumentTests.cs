using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>An amendment as a document: what it states, how it follows the one before, and what is refused.</summary>
[Trait("lane", "slow")]
public sealed class AmendmentDocumentTests
{
    private const string Reason = "the director asks for less";
    private const StringComparison Comparison = StringComparison.Ordinal;

    /// <summary>The study with its approved protocol locked, and another protocol in the folder.</summary>
    private static StudyBytes Amended { get; } =
        ApprovedProtocol
            .StudyWith(ApprovedProtocol.SignedTwice)
            .With(
                StudyBytes.ProtocolName,
                Encoding.UTF8.GetBytes(
                    Encoding
                        .UTF8.GetString(ApprovedProtocol.Bytes.Span)
                        .Replace("share_percent_min = 85", "share_percent_min = 80", Comparison)
                )
            );

    private static readonly Lazy<ProtocolDrawing.Drawn> s_drawn = new(() =>
        ApprovedProtocol.Drawn(Amended, reason: Reason)
    );

    private static readonly Lazy<ReadOnlyMemory<byte>> s_signed = new(() =>
        SignedTwice(s_drawn.Value.Document.Pdf)
    );

    private static ReadOnlyMemory<byte> Signed => s_signed.Value;

    public static TheoryData<string> ForgedNames => [.. Forgeries.Select(item => item.Name)];

    /// <summary>Amendments with right signatures and right pages, which state what is not so, and words of what is said of each.</summary>
    private static ImmutableArray<(
        string Name,
        string Said,
        Func<AmendedProtocol, AmendedProtocol> Make
    )> Forgeries =>
        [
            (
                "a change left out of the list",
                "The list of changes",
                amends => amends with { Amendment = amends.Amendment with { Changes = [] } }
            ),
            (
                "another value in the list",
                "The list of changes",
                amends =>
                    amends with
                    {
                        Amendment = amends.Amendment with
                        {
                            Changes =
                            [
                                .. amends.Amendment.Changes.Select(change =>
                                    change with
                                    {
                                        After = "85",
                                    }
                                ),
                            ],
                        },
                    }
            ),
            (
                "another earlier protocol",
                "amends another protocol",
                amends => Of(amends, "share_percent_min = 85", "share_percent_min = 82")
            ),
            (
                "an earlier protocol that is not the one it names",
                "is not the one that the amendment names",
                amends =>
                    amends with
                    {
                        Earlier = (byte[])[.. amends.Earlier.Span, .. "# more\n"u8],
                    }
            ),
            (
                "another earlier lock",
                "amends another protocol",
                amends =>
                    amends with
                    {
                        Amendment = amends.Amendment with
                        {
                            EarlierLockSha256 = new string('0', 64),
                        },
                    }
            ),
            (
                "another number",
                "is that of amendment 2",
                amends => amends with { Amendment = amends.Amendment with { LockNumber = 3 } }
            ),
            (
                "another earlier document",
                "that the amendment names is another one",
                amends =>
                    amends with
                    {
                        Amendment = amends.Amendment with
                        {
                            EarlierDocumentSha256 = new string('0', 64),
                        },
                    }
            ),
        ];

    [Fact]
    public void It_states_what_changed_against_the_lock_before()
    {
        var amendment = s_drawn.Value.Amendment;
        Assert.NotNull(amendment);
        Assert.Equal((1, 2, Reason), (amendment.Number, amendment.LockNumber, amendment.Reason));
        Assert.Equal(
            InputDigest.Sha256(ApprovedProtocol.Bytes.Span),
            amendment.EarlierProtocolSha256
        );
        Assert.Equal(
            InputDigest.Sha256(ApprovedProtocol.SignedTwice.Span),
            amendment.EarlierDocumentSha256
        );
        var change = Assert.Single(amendment.Changes);
        Assert.Equal(
            ("criterion.each.share_percent_min", "85", "80"),
            (change.Key, change.Before, change.After)
        );
        Assert.Equal("criterion each: least share that agrees, percent", change.Meaning);
    }

    [Fact]
    public void Signed_and_locked_it_says_who_approved_and_who_amended()
    {
        var approved = Assert.IsType<ApprovalAttempt.Approved>(
            ProtocolLocking.Approve(Amended, Signed)
        );
        Assert.Equal((null, Reason), (approved.LockNumber, approved.Reason));
        var files = Locked(Signed);
        Assert.Equal(
            2,
            Assert
                .IsType<ApprovalAttempt.Approved>(ProtocolLocking.Approve(files, Signed))
                .LockNumber
        );
        var part = EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3];
        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Assert.Contains(
            part.Sentences,
            sentence =>
                sentence.Contains(
                    "criteria approved by signature of Medical Director One (approver) on 2026-05-01, amended by signature of Medical Director One (approver) on 2026-05-01 (1 change)",
                    Comparison
                )
        );
        Assert.Contains(
            part.Sentences,
            sentence =>
                sentence.Contains(
                    "its list of 1 change is what differs between the two",
                    Comparison
                )
        );
    }

    [Fact]
    public void It_verifies_by_itself_on_either_paper()
    {
        var found = EvidenceExample.Verify(Signed);
        Assert.Equal(DocumentKind.Protocol, found.Document);
        Assert.Equal("TOTAL-PASSED", found.Indication);
        Assert.Contains("the list of 1 change", found.Parts[2].Sentences[0], Comparison);
        var letter = ApprovedProtocol.Drawn(Amended, PaperSize.Letter, Reason).Document.Pdf;
        Assert.Equal(PartOutcome.Holds, EvidenceExample.Verify(letter).Parts[2].Outcome);
    }

    [Fact]
    public void Without_a_reason_or_the_earlier_protocol_there_is_none()
    {
        Assert.Contains("Give the reason", Why(Amended, null), Comparison);
        Assert.Contains("leave --reason away", Why(EvidenceExample.Unlocked, Reason), Comparison);
        Assert.Contains(
            "is not at hand",
            Why(new(Amended.Files.Remove(LockedProtocols.StoredName(1))), Reason),
            Comparison
        );
        Assert.Contains("for another reason", Why(Locked(Signed), "another one"), Comparison);

        static string Why(StudyBytes files, string? reason) =>
            Assert
                .IsType<ProtocolDrawing.Refused>(
                    StudyPipeline.RenderProtocol(files, PaperSize.A4, reason, DateOnly.MinValue)
                )
                .Why;
    }

    /// <summary>The document of the second lock can be made again afterwards, with the reason of the lock.</summary>
    [Fact]
    public void A_locked_amendment_can_be_drawn_again()
    {
        var again = ApprovedProtocol.Drawn(Locked(Signed));
        Assert.True(again.Document.Pdf.Span.SequenceEqual(s_drawn.Value.Document.Pdf.Span));
    }

    [Fact]
    public void Unsigned_it_approves_nothing()
    {
        var files = Locked(s_drawn.Value.Document.Pdf);
        var evidence = ExampleStudy.Analyze(files).Analysis.Lock;
        Assert.Equal(LockLevel.ThisComputersClock, evidence.Level);
        Assert.Null(evidence.Locks[1].Approval);
        Assert.Equal(
            PartOutcome.NotChecked,
            EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3].Outcome
        );
        Assert.Contains(
            "Not everybody",
            Assert
                .IsType<ApprovalAttempt.Refused>(
                    ProtocolLocking.Approve(Amended, s_drawn.Value.Document.Pdf)
                )
                .Why,
            Comparison
        );
    }

    /// <summary>The amended protocol as if it amended nothing: signed with right keys, but its signers were shown no changes.</summary>
    [Fact]
    public void A_document_that_hides_that_it_amends_is_no_full_proof()
    {
        var plain = SignedTwice(
            ApprovedProtocol.Drawn(new(Amended.Files.Remove(LockFile.Name))).Document.Pdf
        );
        Assert.Contains(
            "does not say what was changed",
            Assert.IsType<ApprovalAttempt.Refused>(ProtocolLocking.Approve(Amended, plain)).Why,
            Comparison
        );
        Assert.Equal(
            PartOutcome.NotChecked,
            EvidenceExample.Verify(EvidenceExample.Report(Locked(plain))).Parts[3].Outcome
        );
    }

    [Theory]
    [MemberData(nameof(ForgedNames))]
    public void An_amendment_that_states_what_is_not_so_speaks_against_the_lock(string name)
    {
        var (_, said, make) = Forgeries.Single(item => item.Name == name);
        Assert.True(
            ProtocolDocumentFile.TryRead(s_drawn.Value.Document.Pdf, out var right, out var fault),
            fault
        );
        var forged = ProtocolDocumentFile
            .Render(right.Protocol, right.Bytes, PaperSize.A4, make(right.Amends!))
            .Pdf;
        var document = ProtocolDocumentFile.TryRead(forged, out _, out _)
            ? SignedTwice(forged)
            : forged;
        var refused = Assert.IsType<ApprovalAttempt.Refused>(
            ProtocolLocking.Approve(Amended, document)
        );
        Assert.Contains(said, refused.Why, Comparison);
        var files = Locked(document);
        Assert.Equal(LockStanding.Contradicted, ExampleStudy.Analyze(files).Analysis.Lock.Standing);
        var part = EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3];
        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(part.Sentences, sentence => sentence.Contains(said, Comparison));
    }

    /// <summary>Pages that list other changes than the data beside them.</summary>
    [Fact]
    public void Pages_of_another_list_are_not_those_of_the_document()
    {
        Assert.True(ProtocolDocumentFile.TryRead(s_drawn.Value.Document.Pdf, out var right, out _));
        var other = right with
        {
            Amends = right.Amends! with
            {
                Amendment = right.Amends.Amendment with { Reason = "because" },
            },
        };
        Assert.True(right.IsDrawnAgain());
        Assert.False(other.IsDrawnAgain());
    }

    private static StudyBytes Locked(ReadOnlyMemory<byte> document) =>
        EvidenceExample
            .Locked(Amended, EvidenceExample.LockedAt.AddMinutes(5), reason: Reason)
            .With(LockedProtocols.StoredDocumentName(2), document);

    private static ReadOnlyMemory<byte> SignedTwice(ReadOnlyMemory<byte> document) =>
        ApprovedProtocol.Signed(
            ApprovedProtocol.Signed(document, "author", EvidenceExample.Author),
            "approver",
            EvidenceExample.Director
        );

    /// <summary>The amendment as if the earlier protocol were another one, everything else following from it.</summary>
    private static AmendedProtocol Of(AmendedProtocol amends, string from, string to)
    {
        ReadOnlyMemory<byte> earlier = Encoding.UTF8.GetBytes(
            Encoding.UTF8.GetString(amends.Earlier.Span).Replace(from, to, Comparison)
        );
        return new(
            amends.Amendment with
            {
                EarlierProtocolSha256 = InputDigest.Sha256(earlier.Span),
                Changes = LockedProtocols
                    .Between(earlier, Amended.Files[StudyBytes.ProtocolName])!
                    .Value,
            },
            earlier
        );
    }
}

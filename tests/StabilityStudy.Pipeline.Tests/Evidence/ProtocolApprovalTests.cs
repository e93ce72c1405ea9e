using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Evidence.Forging;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Criteria approved by signature on the protocol document before the first collection: by which rules it counts, and what is refused.</summary>
[Trait("lane", "slow")]
public sealed class ProtocolApprovalTests
{
    private static readonly TheoryData<string> s_forged = [.. Forgeries.Select(item => item.Name)];

    public static TheoryData<string> ForgedNames => s_forged;

    /// <summary>Documents made with the program's code and right signatures, and words of what is said of each.</summary>
    private static ImmutableArray<(
        string Name,
        string Said,
        Func<ReadOnlyMemory<byte>> Make
    )> Forgeries =>
        [
            (
                "no PDF",
                "cannot be read as a PDF",
                () => Encoding.ASCII.GetBytes("approved by the director")
            ),
            ("a report in its place", "is no protocol document", () => EvidenceExample.SignedTwice),
            (
                "the document of another protocol",
                "carries another protocol",
                () =>
                {
                    var bytes = Encoding.UTF8.GetBytes(
                        Encoding.UTF8.GetString(ApprovedProtocol.Bytes.Span) + "# wider\n"
                    );
                    var other = EvidenceExample.Unlocked.With(StudyBytes.ProtocolName, bytes);
                    return ApprovedProtocol.Signed(
                        ApprovedProtocol.Signed(
                            ApprovedProtocol.Drawn(other).Document.Pdf,
                            "author",
                            EvidenceExample.Author
                        ),
                        "approver",
                        EvidenceExample.Director
                    );
                }
            ),
            (
                "bytes after the last signature",
                "bytes after the end",
                () => (byte[])[.. ApprovedProtocol.SignedTwice.Span, .. "\n% more\n"u8]
            ),
            (
                "one signed byte changed",
                "Lab Scientist One",
                () =>
                {
                    var bytes = ApprovedProtocol.SignedTwice.ToArray();
                    bytes[200] ^= 1;
                    return bytes;
                }
            ),
            (
                "one person for both",
                "the same key has signed before",
                () =>
                    ApprovedProtocol.Forged(ApprovedProtocol.SignedOnce, 1, EvidenceExample.Author)
            ),
            (
                "the approver before the author",
                "signed out of turn",
                () =>
                    ApprovedProtocol.Forged(ApprovedProtocol.Unsigned, 1, EvidenceExample.Director)
            ),
            (
                "a decision on windows",
                "states a decision",
                () =>
                    ApprovedProtocol.Forged(
                        ApprovedProtocol.SignedOnce,
                        1,
                        EvidenceExample.Director,
                        statement =>
                            statement with
                            {
                                Decision = ForgedRevision.ApprovalOf(ForgedRevision.Analysis),
                            }
                    )
            ),
            (
                "a statement about another protocol",
                "meant for another protocol",
                () =>
                    ApprovedProtocol.Forged(
                        ApprovedProtocol.SignedOnce,
                        1,
                        EvidenceExample.Director,
                        statement => statement with { InputDigest = new string('0', 64) }
                    )
            ),
            (
                "another meaning",
                "is not that of the protocol",
                () =>
                    ApprovedProtocol.Forged(
                        ApprovedProtocol.SignedOnce,
                        1,
                        EvidenceExample.Director,
                        saying: content => content with { Reason = "approver: has seen it" }
                    )
            ),
            (
                "a stamp that says something else",
                "is not what was signed",
                () =>
                    ApprovedProtocol.Forged(
                        ApprovedProtocol.SignedOnce,
                        1,
                        EvidenceExample.Director,
                        saying: content =>
                            content with
                            {
                                Stamp = content.Stamp! with { Lines = content.Stamp.Lines[..1] },
                            }
                    )
            ),
        ];

    [Fact]
    public void A_signed_document_beside_the_lock_is_the_strongest_level()
    {
        var files = ApprovedProtocol.StudyWith(ApprovedProtocol.SignedTwice);
        var analysis = ExampleStudy.Analyze(files).Analysis;
        Assert.Equal(LockLevel.ByApprover, analysis.Lock.Level);
        Assert.Equal("Medical Director One", analysis.Lock.Approval?.By);
        Assert.Equal(ApprovedProtocol.SignedAt, analysis.Lock.Approval?.At);
        Assert.True(analysis.Lock.IsApprovedInTime);

        var report = EvidenceExample.Report(files);
        var part = ReportVerifier.Verify(report, EvidenceExample.Trusting).Parts[3];
        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Assert.Contains(
            part.Sentences,
            sentence =>
                sentence.Contains(
                    "criteria approved by signature of Medical Director One (approver) on 2026-05-01",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void Without_a_trust_store_it_is_not_fully_checked()
    {
        var report = EvidenceExample.Report(
            ApprovedProtocol.StudyWith(ApprovedProtocol.SignedTwice)
        );
        Assert.Equal(
            PartOutcome.NotChecked,
            ReportVerifier.Verify(report, EvidenceExample.WithoutTrust).Parts[3].Outcome
        );
    }

    [Fact]
    public void A_document_that_not_everybody_has_signed_approves_nothing_and_speaks_against_nothing()
    {
        foreach (var document in new[] { ApprovedProtocol.Unsigned, ApprovedProtocol.SignedOnce })
        {
            var files = ApprovedProtocol.StudyWith(document);
            var analysis = ExampleStudy.Analyze(files).Analysis;
            Assert.Equal(LockLevel.ThisComputersClock, analysis.Lock.Level);
            Assert.Null(analysis.Lock.Approval);
            var part = EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3];
            Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        }
    }

    [Fact]
    public void Signed_after_the_first_collection_it_approves_nothing_beforehand()
    {
        var late = ApprovedProtocol.Signed(
            ApprovedProtocol.SignedOnce,
            "approver",
            EvidenceExample.Director,
            EvidenceExample.Now
        );
        var files = ApprovedProtocol.StudyWith(late);
        var analysis = ExampleStudy.Analyze(files).Analysis;
        Assert.Equal(LockLevel.ThisComputersClock, analysis.Lock.Level);
        Assert.Contains(
            analysis.Queries,
            query => query.Kind.Code == "approved-after-first-collection"
        );
        var part = EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3];
        Assert.Equal(PartOutcome.NotChecked, part.Outcome);
        Assert.Contains(
            part.Sentences,
            sentence => sentence.Contains("approves nothing beforehand", StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(ForgedNames))]
    public void A_document_that_is_not_right_speaks_against_the_lock(string name)
    {
        var (_, said, make) = Forgeries.Single(item => item.Name == name);
        var document = make();
        var files = ApprovedProtocol.StudyWith(document);
        Assert.Equal(LockStanding.Contradicted, ExampleStudy.Analyze(files).Analysis.Lock.Standing);
        var part = EvidenceExample.Verify(EvidenceExample.Report(files)).Parts[3];
        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Assert.Contains(
            part.Sentences,
            sentence => sentence.Contains(said, StringComparison.Ordinal)
        );
        var refused = Assert.IsType<ApprovalAttempt.Refused>(
            ProtocolLocking.Approve(EvidenceExample.Unlocked, document)
        );
        Assert.Contains(said, refused.Why, StringComparison.Ordinal);
    }

    /// <summary>The pages are drawn again where somebody judges the document: to draw them in each analysis would be dear.</summary>
    [Fact]
    public void Pages_that_show_another_protocol_than_the_one_inside_fail()
    {
        var document = ApprovedProtocol.Forged(
            ApprovedProtocol.Forged(ApprovedProtocol.WithOtherPages(), 0, EvidenceExample.Author),
            1,
            EvidenceExample.Director
        );
        var found = ReportVerifier.Verify(document, EvidenceExample.Trusting);
        Assert.Equal(
            [PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Fails],
            EvidenceExample.Outcomes(found)
        );
        Assert.IsType<ApprovalAttempt.Refused>(
            ProtocolLocking.Approve(EvidenceExample.Unlocked, document)
        );
        Assert.Equal(
            PartOutcome.Fails,
            EvidenceExample
                .Verify(EvidenceExample.Report(ApprovedProtocol.StudyWith(document)))
                .Parts[3]
                .Outcome
        );
        Assert.Contains(
            "The pages are not those",
            Assert
                .IsType<SigningAttempt.Refused>(
                    EvidenceExample.Sign(
                        ApprovedProtocol.Forged(
                            ApprovedProtocol.WithOtherPages(),
                            0,
                            EvidenceExample.Author
                        ),
                        "approver",
                        EvidenceExample.Director
                    )
                )
                .Why,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_document_verifies_by_itself()
    {
        var found = EvidenceExample.Verify(ApprovedProtocol.SignedTwice);
        Assert.Equal(DocumentKind.Protocol, found.Document);
        Assert.Equal(ApprovedProtocol.Protocol.Code, found.StudyCode);
        Assert.Equal(
            [PartOutcome.Holds, PartOutcome.Holds, PartOutcome.Holds],
            EvidenceExample.Outcomes(found)
        );
        Assert.Equal("TOTAL-PASSED", found.Indication);
        Assert.Null(found.Decision);
        Assert.Equal(
            PartOutcome.NotChecked,
            EvidenceExample.Verify(ApprovedProtocol.Unsigned).Outcome
        );
    }

    [Fact]
    public void Both_papers_are_drawn_again()
    {
        var letter = ApprovedProtocol.Drawn(EvidenceExample.Unlocked, PaperSize.Letter).Document;
        Assert.Equal(PartOutcome.Holds, EvidenceExample.Verify(letter.Pdf).Parts[2].Outcome);
        Assert.False(letter.Pdf.Span.SequenceEqual(ApprovedProtocol.Unsigned.Span));
    }

    [Fact]
    public void It_takes_no_decision_and_no_role_but_its_own()
    {
        Assert.Contains(
            "takes no decision",
            Refusal(
                "approver",
                ApprovedProtocol.SignedOnce,
                EvidenceExample.Director,
                DecisionRequest.Approval
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Its roles: author, approver",
            Refusal("reviewer", ApprovedProtocol.Unsigned, EvidenceExample.Director, null),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "signs before the approver",
            Refusal("approver", ApprovedProtocol.Unsigned, EvidenceExample.Director, null),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "This key has signed already",
            Refusal("approver", ApprovedProtocol.SignedOnce, EvidenceExample.Author, null),
            StringComparison.Ordinal
        );

        static string Refusal(
            string role,
            ReadOnlyMemory<byte> document,
            Signer signer,
            DecisionRequest? decision
        ) =>
            Assert
                .IsType<SigningAttempt.Refused>(
                    EvidenceExample.Sign(
                        document,
                        role,
                        signer,
                        decision,
                        ApprovedProtocol.SignedAt
                    )
                )
                .Why;
    }

    /// <summary>An amendment of rules needs a document of its own; one of numbers alone leaves the approved criteria where they were.</summary>
    [Theory]
    [InlineData("specimens = ", true)]
    [InlineData("share_percent_min = ", false)]
    public void An_amendment_keeps_an_approval_only_where_it_keeps_the_rules(
        string key,
        bool isKept
    )
    {
        var files = ApprovedProtocol.StudyWith(ApprovedProtocol.SignedTwice);
        var text = Encoding.UTF8.GetString(ApprovedProtocol.Bytes.Span);
        var at = text.IndexOf("\n" + key, StringComparison.Ordinal) is > 0 and var line
            ? line + 1 + key.Length
            : text.IndexOf(" " + key, StringComparison.Ordinal) + 1 + key.Length;
        var amended = EvidenceExample.Locked(
            files.With(
                StudyBytes.ProtocolName,
                // One digit before the number: more specimens, or a larger share.
                Encoding.UTF8.GetBytes(isKept ? text.Insert(at, "1") : Larger(text, at))
            ),
            EvidenceExample.LockedAt.AddMinutes(5),
            reason: "amended"
        );
        var evidence = ExampleStudy.Analyze(amended).Analysis.Lock;
        Assert.Equal(isKept, evidence.Locks[1].KeepsRules);
        Assert.Equal(isKept ? LockLevel.ByApprover : LockLevel.ThisComputersClock, evidence.Level);

        static string Larger(string text, int at) =>
            string.Concat(text.AsSpan(0, at), "9", text.AsSpan(at + 1));
    }

    [Fact]
    public void A_lock_finds_out_whether_it_is_the_one_that_the_document_approves()
    {
        var before = Assert.IsType<ApprovalAttempt.Approved>(
            ProtocolLocking.Approve(EvidenceExample.Unlocked, ApprovedProtocol.SignedTwice)
        );
        Assert.Null(before.LockNumber);
        Assert.Equal("approver", before.Approval.Role);
        var after = Assert.IsType<ApprovalAttempt.Approved>(
            ProtocolLocking.Approve(EvidenceExample.StudyFiles, ApprovedProtocol.SignedTwice)
        );
        Assert.Equal(1, after.LockNumber);
        Assert.Contains(
            "Not everybody",
            Assert
                .IsType<ApprovalAttempt.Refused>(
                    ProtocolLocking.Approve(EvidenceExample.Unlocked, ApprovedProtocol.SignedOnce)
                )
                .Why,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Signers_whom_nobody_trusts_prove_nothing()
    {
        var stranger = EvidenceExample.Anchors(Signer.Make("Somebody Else").Certificate);
        var found = ReportVerifier.Verify(
            ApprovedProtocol.SignedTwice,
            new VerificationOptions(stranger, []) { Now = EvidenceExample.Now }
        );
        Assert.NotEqual(PartOutcome.Holds, found.Parts[0].Outcome);
    }
}

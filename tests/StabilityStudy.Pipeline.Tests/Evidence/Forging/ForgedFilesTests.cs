using System.Collections.Concurrent;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>Every kind of forged file fails in the part that it belongs to, in words that name what was done; honest files do not fail.</summary>
[Trait("lane", "slow")]
public sealed class ForgedFilesTests
{
    private static readonly ImmutableArray<ForgedFile> s_all =
    [
        .. ForgedTails.All,
        .. ForgedRevisions.All,
        .. ForgedSigners.All,
        .. ForgedStudies.All,
    ];

    private static readonly VerificationOptions s_trusting = EvidenceExample.Trusting with
    {
        Anchors = EvidenceExample.Anchors([
            EvidenceExample.Author.Certificate,
            EvidenceExample.Director.Certificate,
            .. ForgedSigners.OneKey.Select(signer => signer.Certificate),
        ]),
    };

    // Most files have the first revision of the example's report: what it comes to is computed once.
    private static readonly ConcurrentDictionary<string, Recomputation> s_computed = new();

    public static TheoryData<string> Names => [.. s_all.Select(file => file.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_forged_file_fails(string name)
    {
        var forged = s_all.Single(file => file.Name == name);
        var found = Verify(forged.Make(), s_trusting);
        var words = Words(found);

        Assert.True(found.Outcome == PartOutcome.Fails, words);
        var part = found.Parts[forged.Part - 1];
        Assert.True(part.Outcome == PartOutcome.Fails, words);
        Assert.Contains(forged.Words, string.Join('\n', part.Sentences), StringComparison.Ordinal);
    }

    [Fact]
    public void There_are_forged_files_of_every_part_and_each_is_named_once()
    {
        Assert.True(s_all.Length >= 60, $"{s_all.Length}");
        Assert.Equal([1, 2, 3, 4], s_all.Select(file => file.Part).Distinct().Order());
        Assert.Equal(s_all.Length, s_all.Select(file => file.Name).Distinct().Count());
    }

    [Fact]
    public void Honest_files_are_accepted()
    {
        Assert.Equal(PartOutcome.Holds, Outcome(EvidenceExample.SignedTwice));
        Assert.Equal(
            PartOutcome.Holds,
            Outcome(
                ForgedStudies.Signed(
                    StudyPipeline
                        .Render(ExampleStudy.Analyze(EvidenceExample.StudyFiles), PaperSize.Letter)
                        .Pdf
                )
            )
        );
        Assert.Equal(
            PartOutcome.Holds,
            Outcome(ForgedStudies.Signed(EvidenceExample.Report(WithUnreadTable())))
        );
    }

    [Fact]
    public void Three_signatures_in_their_order_are_accepted()
    {
        var reviewer = Signer.Make("Lab Scientist Two");
        var files = EvidenceExample.Locked(
            EvidenceExample.Unlocked.Edited(
                "protocol.toml",
                "  { role = \"approver\"",
                "  { role = \"reviewer\", meaning = \"checked the figures\" },\n  { role = \"approver\""
            ),
            EvidenceExample.LockedAt,
            EvidenceExample.Author
        );
        var report = EvidenceExample.Signed(
            EvidenceExample.Signed(
                EvidenceExample.Signed(
                    EvidenceExample.Report(files),
                    "author",
                    EvidenceExample.Author
                ),
                "reviewer",
                reviewer
            ),
            "approver",
            EvidenceExample.Director,
            DecisionRequest.Approval
        );
        var found = Verify(
            report,
            s_trusting with
            {
                Anchors = EvidenceExample.Anchors(
                    EvidenceExample.Author.Certificate,
                    EvidenceExample.Director.Certificate,
                    reviewer.Certificate
                ),
            }
        );

        Assert.True(found.Outcome == PartOutcome.Holds, Words(found));
        Assert.Contains(
            "not among the people of study.toml",
            Words(found),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_is_proved_in_part_is_not_fully_checked()
    {
        IsNotChecked(EvidenceExample.Unsigned, "Nobody has signed");
        IsNotChecked(EvidenceExample.SignedOnce, "Not signed: approver");
        IsNotChecked(
            ForgedStudies.Signed(EvidenceExample.Report(EvidenceExample.LockedByClock)),
            "Nothing but a computer's own clock shows the time of lock 1"
        );
        IsNotChecked(
            ForgedStudies.Signed(
                EvidenceExample.Report(
                    new(EvidenceExample.StudyFiles.Files.Remove(StudyRecord.Name))
                )
            ),
            "no record of the study names"
        );
        IsNotChecked(
            ForgedStudies.Signed(EvidenceExample.Report(RecordBegunLater())),
            "no record of the study names"
        );
        IsNotChecked(
            ForgedStudies.Signed(
                ForgedReport.Earlier((_, text) => text),
                ForgedReport.EarlierVersion
            ),
            "Pages not recomputed"
        );
        IsNotChecked(
            ForgedStudies.Signed(
                ForgedReport.OnePage(
                    (name, text) =>
                        name == "analysis.json"
                            ? text.Replace(
                                $"\"toolVersion\": \"{ToolVersion.Current}\"",
                                "\"toolVersion\": \"99.0.0\"",
                                StringComparison.Ordinal
                            )
                            : text
                ),
                "99.0.0"
            ),
            "Use version 99.0.0 or a later one"
        );
    }

    // An amendment is on record, and the first lock is not.
    private static StudyBytes RecordBegunLater()
    {
        var first = EvidenceExample.Locked(
            EvidenceExample.Unlocked,
            EvidenceExample.LockedAt,
            EvidenceExample.Author
        );
        return EvidenceExample.Locked(
            new StudyBytes(first.Files.Remove(StudyRecord.Name)).Edited(
                "protocol.toml",
                "percent = 8.0",
                "percent = 8.1"
            ),
            EvidenceExample.LockedAt.AddMinutes(9),
            EvidenceExample.Author,
            "a limit was corrected"
        );
    }

    private static StudyBytes WithUnreadTable() =>
        EvidenceExample.StudyFiles.WithText("notes of the week.csv", "day,what\n");

    private static PartOutcome Outcome(ReadOnlyMemory<byte> report)
    {
        var found = Verify(report, s_trusting);
        return found.Outcome == PartOutcome.Holds
            ? PartOutcome.Holds
            : throw new Xunit.Sdk.XunitException(Words(found));
    }

    private static void IsNotChecked(ReadOnlyMemory<byte> report, string words)
    {
        var found = Verify(report, s_trusting);

        Assert.True(found.Outcome == PartOutcome.NotChecked, Words(found));
        Assert.Contains(words, Words(found), StringComparison.Ordinal);
    }

    private static ReportVerification Verify(
        ReadOnlyMemory<byte> report,
        VerificationOptions options
    ) =>
        ReportVerifier.Verify(
            report,
            options,
            record: null,
            study =>
                s_computed.GetOrAdd(
                    InputDigest.Sha256(study.FirstRevision.Span),
                    _ => Recomputation.Of(study)
                )
        );

    private static string Words(ReportVerification found) =>
        string.Join('\n', found.Parts.SelectMany(part => part.Sentences));
}

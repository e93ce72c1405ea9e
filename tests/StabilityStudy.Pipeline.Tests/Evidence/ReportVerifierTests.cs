using System.Text;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Files.Locking;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;
using static StabilityStudy.Pipeline.Verification.PartOutcome;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A verification trusts nothing in the file: what was altered fails in the part that it belongs to.</summary>
[Trait("lane", "slow")]
public sealed class ReportVerifierTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static ImmutableArray<PartOutcome> Verified(ReadOnlyMemory<byte> report) =>
        EvidenceExample.Outcomes(EvidenceExample.Verify(report));

    private static string Words(ReadOnlyMemory<byte> report) =>
        Words(EvidenceExample.Verify(report));

    private static string Words(ReportVerification found) =>
        string.Join(' ', found.Parts.SelectMany(part => part.Sentences));

    [Fact]
    public void All_four_parts_of_a_signed_report_hold()
    {
        var found = EvidenceExample.Verify(EvidenceExample.SignedTwice);

        Assert.Equal([Holds, Holds, Holds, Holds], EvidenceExample.Outcomes(found));
        Assert.Equal("SHEET-PT", found.StudyCode);
        Assert.StartsWith("Supported to 12 h", Assert.Single(found.Conclusions), Comparison);
        Assert.Contains("Decision: approved.", Words(found), Comparison);
        Assert.Contains("byte for byte", Words(found), Comparison);
    }

    [Fact]
    public void Without_a_trust_store_the_chain_is_not_checked()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.WithoutTrust
        );

        Assert.Equal([NotChecked, Holds, Holds, NotChecked], EvidenceExample.Outcomes(found));
        Assert.Contains(
            found.Parts[0].Sentences,
            text => text.Contains("no trust store was given", Comparison)
        );
    }

    [Fact]
    public void A_signer_whom_the_trust_store_does_not_know_fails()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                Anchors = EvidenceExample.Anchors(EvidenceExample.Author.Certificate),
            }
        );

        Assert.Equal([Fails, Holds, Holds, Holds], EvidenceExample.Outcomes(found));
    }

    [Fact]
    public void A_certificate_that_is_over_today_was_valid_at_the_claimed_time_only()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                Now = EvidenceExample.Now.AddDays(301),
            }
        );

        Assert.Equal([NotChecked, Holds, Holds, NotChecked], EvidenceExample.Outcomes(found));
        Assert.Contains(
            "expired on " + TrustWords.Time(EvidenceExample.Now.AddDays(300).ToUniversalTime()),
            found.Parts[0].Sentences[0],
            Comparison
        );
        Assert.Contains("valid at the claimed time only", found.Parts[0].Sentences[0], Comparison);
    }

    [Fact]
    public void A_signature_of_the_future_fails()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                Now = EvidenceExample.Now.AddHours(-1),
            }
        );

        Assert.Equal(Fails, found.Parts[0].Outcome);
        Assert.Contains("lies after this verification", found.Parts[0].Sentences[0], Comparison);
    }

    [Fact]
    public void A_time_that_no_stamp_shows_is_the_claim_of_the_signer() =>
        Assert.Contains(
            "that time is the signer's claim, which no time stamp shows",
            Words(EvidenceExample.SignedTwice),
            Comparison
        );

    [Fact]
    public void What_could_not_be_read_of_the_trust_store_is_not_checked()
    {
        var found = ReportVerifier.Verify(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                UnreadFiles = ["list.crl cannot be read."],
            }
        );

        Assert.Equal([NotChecked, Holds, Holds, Holds], EvidenceExample.Outcomes(found));
        Assert.Equal("list.crl cannot be read.", found.Parts[0].Sentences[0]);
    }

    [Fact]
    public void What_nobody_has_signed_yet_is_not_fully_checked()
    {
        Assert.Equal([NotChecked, NotChecked, Holds, Holds], Verified(EvidenceExample.Unsigned));
        var once = EvidenceExample.Verify(EvidenceExample.SignedOnce);
        Assert.Equal([NotChecked, Holds, Holds, Holds], EvidenceExample.Outcomes(once));
        Assert.Contains("Not signed: approver.", Words(once), Comparison);
    }

    [Fact]
    public void An_approval_that_was_cut_off_leaves_a_report_that_the_approver_has_not_signed() =>
        Assert.Contains(
            "Not signed: approver.",
            Words(EvidenceExample.SignedTwice[..EvidenceExample.SignedOnce.Length]),
            Comparison
        );

    [Fact]
    public void Bytes_after_the_end_fail()
    {
        byte[] longer = [.. EvidenceExample.SignedTwice.Span, .. "\n% more\n"u8];

        Assert.Equal(Fails, Verified(longer)[1]);
    }

    /// <summary>A dozen bytes, or as many as the variable FUZZ_INPUTS says; each one of the signatures is tried by the tests of SignedPdf.</summary>
    [Fact]
    public void Any_changed_byte_fails()
    {
        var random = new Random(20261125);
        for (var i = LongProof.Setting("FUZZ_INPUTS", 12); i > 0; i--)
        {
            var altered = EvidenceExample.SignedTwice.ToArray();
            var at = random.Next(altered.Length);
            altered[at] ^= (byte)(1 << random.Next(8));

            Assert.True(
                Verified(altered).Contains(Fails),
                FormattableString.Invariant($"byte {at}")
            );
        }
    }

    [Fact]
    public void An_altered_conclusion_signed_by_anybody_does_not_follow_from_the_data()
    {
        var forged = ForgedReport.Make(
            attached: (name, text) =>
                name == "analysis.json"
                    ? text.Replace(
                        "\"criterion\": \"mean\"",
                        "\"criterion\": \"meant\"",
                        Comparison
                    )
                    : text
        );

        var found = EvidenceExample.Verify(forged);
        Assert.Equal(Fails, EvidenceExample.Outcomes(found)[2]);
        Assert.Contains("criteria[mean] is missing in the report", Words(found), Comparison);
        Assert.IsType<SigningAttempt.Refused>(
            EvidenceExample.Sign(forged, "author", EvidenceExample.Author)
        );
    }

    [Fact]
    public void An_altered_estimate_does_not_follow_from_the_data()
    {
        var forged = ForgedReport.Make(
            attached: (name, text) => name == "analysis.json" ? WithOtherMean(text) : text
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Fact]
    public void Last_digits_of_another_processor_hold()
    {
        var report = ForgedReport.Make(
            attached: (name, text) => name == "analysis.json" ? WithOtherMean(text, 1e-10) : text
        );

        var found = EvidenceExample.Verify(report);
        Assert.True(EvidenceExample.Outcomes(found)[2] == Holds, Words(found));
    }

    [Fact]
    public void A_number_beyond_every_double_equals_nothing()
    {
        var forged = ForgedReport.Make(
            attached: (name, text) => name == "analysis.json" ? WithMean(text, "1e999") : text
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Theory]
    [InlineData("results.csv", "12.3", "12.1")]
    [InlineData("protocol.toml", "share_percent_min = 85", "share_percent_min = 50")]
    [InlineData("study.toml", "Lab Scientist One", "Lab Scientist Won")]
    public void Other_inputs_than_those_of_the_analysis_fail(string file, string from, string to)
    {
        var forged = ForgedReport.Make(
            attached: (name, text) => name == file ? Replaced(text, from, to) : text
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Fact]
    public void Pages_that_say_something_else_than_the_data_fail()
    {
        var forged = ForgedReport.Make(pages: analysis =>
            analysis with
            {
                Facts = analysis.Facts with { Question = "May it wait for two days?" },
            }
        );

        var found = EvidenceExample.Verify(forged);
        Assert.Equal([NotChecked, NotChecked, Fails, Holds], EvidenceExample.Outcomes(found));
        Assert.Contains("The pages are not those", Words(found), Comparison);
    }

    [Fact]
    public void A_conclusion_painted_otherwise_fails_although_the_data_are_right()
    {
        var forged = ForgedReport.Make(pages: analysis =>
            analysis with
            {
                Sequences =
                [
                    .. analysis.Sequences.Select(sequence =>
                        sequence with
                        {
                            Cells =
                            [
                                .. sequence.Cells.Select(cell =>
                                    cell with
                                    {
                                        Conclusion = Conclusion.Inconclusive,
                                    }
                                ),
                            ],
                        }
                    ),
                ],
            }
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Fact]
    public void A_report_drawn_again_from_its_own_parts_is_the_same() =>
        Assert.Equal(Holds, Verified(ForgedReport.Make())[2]);

    [Fact]
    public void A_missing_attachment_fails()
    {
        var forged = ForgedReport.Make(
            attached: (name, text) => name == "specimens.csv" ? "" : text
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Fact]
    public void A_data_query_taken_out_of_the_analysis_is_missed()
    {
        var forged = ForgedReport.Make(
            attached: (name, text) =>
                name == "analysis.json"
                    ? Replaced(text, "\"code\": \"controls-not-checked\"", "\"code\": \"no-doubt\"")
                    : text
        );

        Assert.Equal(Fails, Verified(forged)[2]);
    }

    [Fact]
    public void A_study_that_was_never_locked_cannot_show_that_the_criteria_came_first()
    {
        var unlocked = EvidenceExample.Report(EvidenceExample.Unlocked);

        Assert.Equal(Fails, Verified(unlocked)[3]);
    }

    [Theory]
    [InlineData(
        "2026-05-01T13:20:00-05:00",
        "2026-05-20T13:20:00-05:00",
        "after the first collection"
    )]
    [InlineData("protocol_sha256 = \"", "protocol_sha256 = \"00", "Changed since it was locked")]
    public void A_lock_that_came_late_or_holds_another_protocol_fails(
        string from,
        string to,
        string expected
    )
    {
        var report = EvidenceExample.Report(
            EvidenceExample.LockedByClock.Edited(LockFile.Name, from, to)
        );

        var found = EvidenceExample.Verify(report);
        Assert.Equal(Fails, EvidenceExample.Outcomes(found)[3]);
        Assert.Contains(expected, Words(found), Comparison);
    }

    [Fact]
    public void A_file_that_is_no_PDF_fails_everywhere_it_can() =>
        Assert.Equal([Fails, Fails, Fails, NotChecked], Verified("nothing"u8.ToArray()));

    private static string Replaced(string text, string from, string to)
    {
        Assert.Contains(from, text, Comparison);
        var at = text.IndexOf(from, Comparison);
        return text[..at] + to + text[(at + from.Length)..];
    }

    private static string WithOtherMean(string text, double by = 1e-6)
    {
        var (at, end) = PlaceOfMean(text);
        var mean = double.Parse(text[at..end], System.Globalization.CultureInfo.InvariantCulture);
        // To eleven digits, as figures are written.
        var other = double.Parse(
            FormattableString.Invariant($"{mean * (1 + by):E10}"),
            System.Globalization.CultureInfo.InvariantCulture
        );
        return text[..at] + FormattableString.Invariant($"{other}") + text[end..];
    }

    private static string WithMean(string text, string mean)
    {
        var (at, end) = PlaceOfMean(text);
        return text[..at] + mean + text[end..];
    }

    private static (int From, int To) PlaceOfMean(string text)
    {
        var at = text.IndexOf("\"mean\": ", Comparison) + "\"mean\": ".Length;
        return (at, text.IndexOfAny([',', '\n'], at));
    }
}

using StabilityStudy.Core.Register;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Register;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>What a signed report brings into the register, and what a damaged, untrusted or undecided one does not.</summary>
public sealed class RegisterReadingTests
{
    private static readonly DateOnly s_signed = DateOnly.FromDateTime(EvidenceExample.Now.DateTime);

    private static RegisteredReport Read(
        ReadOnlyMemory<byte> pdf,
        VerificationOptions? options = null
    ) => RegisterReading.Read("report.pdf", pdf, options ?? EvidenceExample.Trusting).Report!;

    private static RegisteredReport Decided(DecisionRequest request) =>
        Decided(EvidenceExample.SignedOnce, request);

    private static RegisteredReport Decided(
        ReadOnlyMemory<byte> signedOnce,
        DecisionRequest request
    ) => Read(EvidenceExample.Signed(signedOnce, "approver", EvidenceExample.Director, request));

    private static RegisteredReport Approved(StudyBytes study) =>
        Decided(
            EvidenceExample.Signed(EvidenceExample.Report(study), "author", EvidenceExample.Author),
            DecisionRequest.Approval
        );

    private static BenchAnswer Answer(
        RegisteredReport report,
        TimeSpan waited,
        DateOnly? day = null
    )
    {
        var row = report.Windows.IsEmpty ? null : report.Windows[0].Row;
        return MayTest.Answer(
            new WindowRegister([report]),
            new BenchQuestion(row?.Analyte ?? "PT", day ?? s_signed)
            {
                Group = row?.Group ?? "none",
                Storage = row?.Storage,
                Waited = waited,
            }
        );
    }

    [Fact]
    public void An_approved_report_is_in_force_from_its_signature_on()
    {
        var report = Read(EvidenceExample.SignedTwice);

        Assert.Equal(ReportStanding.Decided, report.Standing);
        Assert.Null(report.Why);
        Assert.Equal("Medical Director One", report.DecidedBy);
        Assert.Equal(EvidenceExample.Now, report.DecidedAt);
        Assert.Equal(s_signed, report.From);
        Assert.Empty(report.Reservations);
        var window = Assert.Single(report.Windows);
        Assert.Equal(window.Row.Supported, window.Approved);
        Assert.True(window.Approved > window.Row.Today);
        Assert.Equal(BenchReason.ApprovedWindow, Answer(report, window.Approved.Value).Reason);
        Assert.Equal(
            BenchVerdict.DoNotTest,
            Answer(report, window.Approved.Value + TimeSpan.FromMinutes(1)).Verdict
        );
    }

    [Fact]
    public void Window_conditions_and_days_are_those_of_the_decision()
    {
        var row = Read(EvidenceExample.SignedTwice).Windows[0].Row;
        var shorter = row.Today + TimeSpan.FromMinutes(30);
        var report = Decided(
            new DecisionRequest(true, "the drift")
            {
                Windows =
                [
                    new(
                        $"{row.Analyte}/{row.Group}",
                        Core.Protocol.DurationText.FormatWindow(shorter)
                    ),
                ],
                Conditions = ["tubes closed"],
                Effective = s_signed.AddDays(5),
                Review = s_signed.AddDays(200),
            }
        );

        var window = Assert.Single(report.Windows);
        Assert.Equal(shorter, window.Approved);
        Assert.Equal(["tubes closed"], window.Conditions);
        Assert.Equal(s_signed.AddDays(5), report.From);
        Assert.Equal(BenchVerdict.DoNotTest, Answer(report, shorter).Verdict);
        Assert.Equal(BenchVerdict.Test, Answer(report, shorter, s_signed.AddDays(5)).Verdict);
        Assert.Equal(BenchReason.PastReview, Answer(report, shorter, s_signed.AddDays(201)).Reason);
    }

    [Fact]
    public void A_declined_report_counts_and_leaves_todays_rule()
    {
        var report = Decided(DecisionRequest.Declined("the runs are too few"));

        Assert.Equal(ReportStanding.Declined, report.Standing);
        Assert.Equal("the runs are too few", report.Reason);
        var today = report.Windows[0].Row.Today;
        Assert.Equal(BenchVerdict.Test, Answer(report, today).Verdict);
        Assert.Equal(
            BenchVerdict.DoNotTest,
            Answer(report, today + TimeSpan.FromMinutes(1)).Verdict
        );
    }

    [Fact]
    public void A_report_on_which_nobody_decided_is_seen_and_puts_nothing_into_force()
    {
        foreach (var pdf in new[] { EvidenceExample.Unsigned, EvidenceExample.SignedOnce })
        {
            var report = Read(pdf);

            Assert.Equal(ReportStanding.NotDecided, report.Standing);
            Assert.NotEmpty(report.Windows);
            Assert.Equal(BenchVerdict.AskDirector, Answer(report, TimeSpan.FromHours(1)).Verdict);
        }
    }

    [Fact]
    public void Without_trust_nothing_in_a_report_counts()
    {
        foreach (
            var options in new[]
            {
                EvidenceExample.WithoutTrust,
                new VerificationOptions(
                    EvidenceExample.Anchors(EvidenceExample.Author.Certificate),
                    []
                )
                {
                    Now = EvidenceExample.Now,
                },
            }
        )
        {
            var report = Read(EvidenceExample.SignedTwice, options);

            Assert.Equal(ReportStanding.NotTrusted, report.Standing);
            Assert.NotNull(report.Why);
            Assert.Equal(BenchVerdict.AskDirector, Answer(report, TimeSpan.FromHours(1)).Verdict);
        }
    }

    [Fact]
    public void An_expired_certificate_ends_the_trust_in_a_time_that_nothing_proves()
    {
        var report = Read(
            EvidenceExample.SignedTwice,
            EvidenceExample.Trusting with
            {
                Now = EvidenceExample.Now.AddYears(2),
            }
        );

        Assert.Equal(ReportStanding.NotTrusted, report.Standing);
    }

    [Fact]
    public void A_study_that_was_not_locked_before_its_data_does_not_count()
    {
        var report = Approved(EvidenceExample.Unlocked);

        Assert.Equal(ReportStanding.NotTrusted, report.Standing);
    }

    [Fact]
    public void A_lock_by_a_computers_clock_alone_counts_with_a_reservation()
    {
        var report = Approved(EvidenceExample.LockedByClock);

        Assert.Equal(ReportStanding.Decided, report.Standing);
        Assert.NotEmpty(report.Reservations);
    }

    /// <summary>One byte changed anywhere: never an answer that lets test.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void A_changed_report_never_answers_test(int place)
    {
        var bytes = EvidenceExample.SignedTwice.ToArray();
        bytes[(bytes.Length / 7 * (place + 1)) + place] ^= 1;
        var report = Read(bytes);

        Assert.Equal(ReportStanding.NotTrusted, report.Standing);
        Assert.Equal(BenchVerdict.AskDirector, Answer(report, TimeSpan.FromMinutes(1)).Verdict);
    }

    [Fact]
    public void A_report_cut_short_or_something_else_never_answers_test()
    {
        var bytes = EvidenceExample.SignedTwice;
        foreach (
            var changed in new[]
            {
                bytes[..(bytes.Length - 40)],
                bytes[..(bytes.Length / 2)],
                (byte[])[.. bytes.Span, .. "\n% more"u8],
                "no PDF"u8.ToArray(),
            }
        )
        {
            var report = Read(changed);

            Assert.False(report.Counts);
            Assert.Equal(BenchVerdict.AskDirector, Answer(report, TimeSpan.FromMinutes(1)).Verdict);
        }
    }

    [Fact]
    public void A_decision_signed_again_comes_after_the_one_it_names()
    {
        var first = Read(EvidenceExample.SignedTwice);
        var again = first with
        {
            File = "again.pdf",
            DecidedAt = EvidenceExample.Now.AddDays(1),
            DecidedAgainAfter = first.DecidedAt,
        };

        var windows = new WindowRegister([first, again]).On(s_signed.AddDays(1));
        Assert.Equal(
            [WindowStanding.Superseded, WindowStanding.InForce],
            windows.Select(item => item.Standing)
        );
    }
}

using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Register;
using static StabilityStudy.Core.Register.WindowStanding;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Core.Tests.Register;

/// <summary>What notices do to windows, day by day. The invented report approves 6 h without anticoagulant from 2026-04-01 on, to be reviewed by 2027-03-31.</summary>
public sealed class NoticedWindowsTests
{
    private const string State = "the file as it was signed";

    private static readonly RegisteredReport s_report = Approved with { FileSha256s = [State] };

    private static readonly DateTimeOffset s_signedAt = new(2026, 6, 1, 9, 0, 0, TimeSpan.Zero);

    private static NoticedReport About(params NoticedWindow[] windows) =>
        new(s_report.Code!, s_report.InputDigest!, State, "Medical Director One", [.. windows]);

    private static NoticedWindow Window(string? stays = null) =>
        new(
            "aPTT",
            "none",
            "No anticoagulant",
            "wb-rt",
            "whole blood",
            Time("4 h"),
            new(2026, 4, 1)
        )
        {
            Window = Time("6 h"),
            Remaining = stays is null ? null : Time(stays),
            Instruments = ["AN1"],
            Lots = ["R-2601"],
        };

    private static RegisteredNotice Signed(
        NoticeKind kind,
        NoticedReport? about = null,
        DateOnly? review = null,
        string by = "Medical Director One",
        int daysLater = 0
    ) =>
        new(
            $"{kind}.pdf",
            NoticeStanding.Counts,
            new Notice(kind, by, "approver", "a reason")
            {
                From = Notice.TakesAwayWindows(kind) ? new DateOnly(2026, 6, 10) : null,
                Review = review,
                Reports = [about ?? About(Window())],
            }
        )
        {
            SignedAt = s_signedAt.AddDays(daysLater),
        };

    private static StandingWindow First(DateOnly day, params RegisteredNotice[] notices) =>
        Register(notices).On(day)[0];

    private static WindowRegister Register(params RegisteredNotice[] notices) =>
        new([s_report]) { Notices = [.. notices] };

    private static BenchAnswer Ask(WindowRegister register, string waited, DateOnly? day = null) =>
        MayTest.Answer(
            register,
            RegisterExample.Ask(waited) with
            {
                Day = day ?? new DateOnly(2026, 6, 10),
            }
        );

    [Theory]
    [InlineData(NoticeKind.Withdrawn, Withdrawn)]
    [InlineData(NoticeKind.EndedByNewDirector, EndedByNewDirector)]
    public void A_window_that_is_taken_away_is_gone_from_that_day_on(
        NoticeKind kind,
        WindowStanding standing
    )
    {
        var notice = Signed(kind);

        Assert.Equal(InForce, First(new(2026, 6, 9), notice).Standing);
        var gone = First(new(2026, 6, 10), notice);
        Assert.Equal(standing, gone.Standing);
        Assert.Same(notice, gone.TakenAwayBy);
        Assert.Equal(BenchVerdict.Test, Ask(Register(notice), "5 h", new(2026, 6, 9)).Verdict);
        Assert.Equal(BenchVerdict.DoNotTest, Ask(Register(notice), "5 h").Verdict);
        Assert.Equal(BenchVerdict.Test, Ask(Register(notice), "4 h").Verdict);
    }

    [Fact]
    public void What_stays_of_a_window_is_in_force_and_of_two_notices_the_shorter()
    {
        var five = Signed(NoticeKind.Withdrawn, About(Window("5 h")));
        var half = Signed(NoticeKind.Withdrawn, About(Window("4 h 30 min")), daysLater: -1);

        var window = First(new(2026, 6, 10), five, half);
        Assert.Equal(InForce, window.Standing);
        Assert.Equal(Time("4 h 30 min"), window.Window.Approved);
        Assert.Equal(BenchVerdict.DoNotTest, Ask(Register(five), "5 h 1 min").Verdict);
        Assert.Equal(BenchVerdict.Test, Ask(Register(five), "5 h").Verdict);
        Assert.Equal(
            Withdrawn,
            First(new(2026, 6, 10), five, Signed(NoticeKind.Withdrawn, daysLater: -9)).Standing
        );
    }

    [Fact]
    public void No_review_or_adoption_brings_a_withdrawn_window_back()
    {
        var review = Signed(NoticeKind.Reviewed, review: new(2030, 1, 1), daysLater: 30);
        var adopted = Signed(NoticeKind.Adopted, by: "Medical Director Two", daysLater: 31);

        Assert.Equal(
            Withdrawn,
            First(new(2026, 8, 1), Signed(NoticeKind.Withdrawn), review, adopted).Standing
        );
    }

    [Fact]
    public void A_review_counts_from_its_signature_on_and_opens_a_window_past_review()
    {
        var late = Signed(NoticeKind.Reviewed, review: new(2029, 1, 1), daysLater: 400);

        Assert.Equal(PastReview, First(new(2027, 4, 1), late).Standing);
        Assert.Equal(new(2027, 3, 31), First(new(2027, 4, 1), late).Review);
        Assert.Equal(InForce, First(new(2027, 7, 6), late).Standing);
        Assert.Equal(InForce, First(new(2029, 1, 1), late).Standing);
        Assert.Equal(PastReview, First(new(2029, 1, 2), late).Standing);
    }

    [Fact]
    public void A_review_by_somebody_who_neither_decided_nor_adopted_has_no_effect()
    {
        var review = Signed(
            NoticeKind.Reviewed,
            review: new(2029, 1, 1),
            by: "Medical Director Two",
            daysLater: 2
        );
        var adopted = Signed(NoticeKind.Adopted, by: "Medical Director Two", daysLater: 1);
        var after = adopted with { SignedAt = s_signedAt.AddDays(3) };

        Assert.Equal(new(2027, 3, 31), First(new(2026, 7, 1), review).Review);
        Assert.Contains(
            "neither decided",
            Assert.Single(Register(review).NoticesWithoutEffect()).Why,
            StringComparison.Ordinal
        );
        Assert.Single(Register(review, after).NoticesWithoutEffect());
        Assert.Empty(Register(review, adopted).NoticesWithoutEffect());
        Assert.Equal(new(2029, 1, 1), First(new(2026, 7, 1), review, adopted).Review);
    }

    [Fact]
    public void An_adoption_without_a_day_leaves_the_day_of_review()
    {
        var adopted = Signed(NoticeKind.Adopted, by: "Medical Director Two");

        var window = First(new(2026, 6, 1), adopted);
        Assert.Equal((InForce, new DateOnly(2027, 3, 31)), (window.Standing, window.Review));
        Assert.Same(adopted, Assert.Single(window.Notices));
    }

    [Theory]
    [InlineData(NoticeStanding.NotTrusted)]
    [InlineData(NoticeStanding.NotSigned)]
    public void A_notice_that_does_not_count_takes_away_the_trust_and_gives_none(
        NoticeStanding standing
    )
    {
        var withdrawal = Signed(NoticeKind.Withdrawn) with { Standing = standing, Why = "why" };
        var review = Signed(NoticeKind.Reviewed, review: new(2030, 1, 1)) with
        {
            Standing = standing,
            Why = "why",
        };

        // Nobody knows from which day on it would hold.
        Assert.Equal(InDoubt, First(new(2026, 4, 1), withdrawal).Standing);
        Assert.Equal(
            BenchReason.NoticeInDoubt,
            Ask(Register(withdrawal), "5 h", new(2026, 6, 2)).Reason
        );
        Assert.Equal(BenchVerdict.Test, Ask(Register(withdrawal), "4 h").Verdict);
        Assert.Equal(BenchVerdict.DoNotTest, Ask(Register(withdrawal), "6 h 1 min").Verdict);
        Assert.Equal(new(2027, 3, 31), First(new(2026, 7, 1), review).Review);
        Assert.Equal(InForce, First(new(2026, 7, 1), review).Standing);
        Assert.Equal(2, Register(withdrawal, review).NoticesWithoutEffect().Length);
    }

    [Fact]
    public void A_withdrawal_that_is_right_ends_a_doubt()
    {
        var doubtful = Signed(NoticeKind.Withdrawn) with { Standing = NoticeStanding.NotSigned };

        Assert.Equal(
            Withdrawn,
            First(new(2026, 6, 10), doubtful, Signed(NoticeKind.Withdrawn)).Standing
        );
    }

    [Fact]
    public void Windows_that_the_report_does_not_have_bring_all_of_it_into_doubt()
    {
        foreach (
            var window in new[]
            {
                Window() with
                {
                    Group = "ufh",
                },
                Window() with
                {
                    Window = Time("8 h"),
                },
                Window() with
                {
                    Instruments = ["AN2"],
                },
            }
        )
        {
            Assert.Equal(
                InDoubt,
                First(new(2026, 6, 10), Signed(NoticeKind.Withdrawn, About(window))).Standing
            );
        }
    }

    [Fact]
    public void A_report_that_it_replaced_does_not_come_back()
    {
        var next = Second(None("4 h", "8 h", "8 h")) with
        {
            Replaces = "e33e04c400000000",
            FileSha256s = ["next"],
        };
        var notice = Signed(
            NoticeKind.Withdrawn,
            new(
                next.Code!,
                next.InputDigest!,
                "next",
                "Medical Director One",
                [Window() with { Window = Time("8 h") }]
            )
        );
        var register = new WindowRegister([s_report, next]) { Notices = [notice] };

        Assert.Equal(
            [Superseded, Superseded, Withdrawn],
            register.On(new(2026, 6, 10)).Select(item => item.Standing)
        );
        Assert.Equal(BenchVerdict.DoNotTest, Ask(register, "5 h").Verdict);
    }

    /// <summary>To withdraw the shorter of two claims must not let the longer one answer.</summary>
    [Fact]
    public void A_rival_that_was_decided_before_the_withdrawal_is_for_the_director()
    {
        var rival = Second(None("4 h", "8 h", "8 h"));
        var register = new WindowRegister([s_report, rival])
        {
            Notices = [Signed(NoticeKind.Withdrawn)],
        };
        var later = new WindowRegister([s_report, rival with { DecidedAt = s_signedAt.AddDays(5) }])
        {
            Notices = register.Notices,
        };

        Assert.Equal(BenchReason.RefusedLater, Ask(register, "7 h").Reason);
        Assert.Equal(BenchVerdict.Test, Ask(later, "7 h").Verdict);
    }

    [Fact]
    public void A_decision_made_again_after_the_withdrawal_is_not_withdrawn_by_it()
    {
        var again = s_report with
        {
            File = "again.pdf",
            FileSha256s = ["again"],
            DecidedAt = s_signedAt.AddDays(8),
            DecidedAgainAfter = s_report.DecidedAt,
            Effective = null,
        };
        var both = new WindowRegister([s_report, again])
        {
            Notices = [Signed(NoticeKind.Withdrawn)],
        };
        var alone = both with { Reports = [again] };

        Assert.Equal(InForce, both.On(new(2026, 6, 10))[2].Standing);
        Assert.Equal(InForce, alone.On(new(2026, 6, 10))[0].Standing);
        Assert.Single(alone.NoticesWithoutEffect());
    }

    [Fact]
    public void A_copy_of_the_report_is_withdrawn_with_it()
    {
        var copy = s_report with { File = "copy.pdf", FileSha256s = ["renewed otherwise"] };
        var register = new WindowRegister([s_report, copy])
        {
            Notices = [Signed(NoticeKind.Withdrawn)],
        };

        Assert.Equal(2, register.On(new(2026, 6, 10)).Count(item => item.Standing == Withdrawn));
    }

    private static RegisteredNotice Ended(string code) =>
        new(
            "ended.pdf",
            NoticeStanding.Counts,
            new Notice(NoticeKind.StudyEnded, "Medical Director One", "approver", "moved")
            {
                Study = new(code, "1", "protocol", 1, s_signedAt, null, 40),
            }
        )
        {
            SignedAt = s_signedAt,
        };

    [Fact]
    public void A_study_without_a_report_is_seen_as_far_as_it_came()
    {
        var register = new WindowRegister([s_report])
        {
            Notices = [Ended("A")],
            Studies =
            [
                new("a.pdf", "A", StudyStage.Planned),
                new("a", "A", StudyStage.Locked) { On = new(2026, 3, 1) },
                new("b", "B", StudyStage.Locked) { On = new(2026, 3, 2) },
                new("b.pdf", "B", StudyStage.Planned),
                new("reported", s_report.Code!, StudyStage.Locked) { On = new(2026, 1, 1) },
            ],
        };

        Assert.Equal(
            [("A", StudyStage.Ended), ("B", StudyStage.Locked)],
            register.WithoutReport(new(2026, 6, 1)).Select(study => (study.Code, study.Stage))
        );
        Assert.Equal(
            [("A", StudyStage.Locked), ("B", StudyStage.Planned)],
            register.WithoutReport(new(2026, 3, 1)).Select(study => (study.Code, study.Stage))
        );
    }

    [Fact]
    public void A_study_that_was_ended_has_no_window_to_rely_on()
    {
        var ended = Ended("WB-RT-APTT");

        Assert.Equal(
            InDoubt,
            new WindowRegister([s_report with { ProtocolSha256 = "protocol" }])
            {
                Notices = [ended],
            }
                .On(Today)[0]
                .Standing
        );
        Assert.Equal(
            InForce,
            new WindowRegister([s_report with { ProtocolSha256 = "another" }]) { Notices = [ended] }
                .On(Today)[0]
                .Standing
        );
    }
}

using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using static StabilityStudy.Core.Register.BenchReason;
using static StabilityStudy.Core.Register.BenchVerdict;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Core.Tests.Register;

/// <summary>The answers at the bench, each written by hand from the rules: today's rule first, then the approved window in its scope, then the cautious answer.</summary>
public sealed class MayTestTests
{
    // Window -1, 0, +1 minute of today's rule, the approved window and the shortest rule.
    [Theory]
    [InlineData("none", "0 min", Test, TodaysRule)]
    [InlineData("none", "239 min", Test, TodaysRule)]
    [InlineData("none", "4 h", Test, TodaysRule)]
    [InlineData("none", "241 min", Test, ApprovedWindow)]
    [InlineData("none", "359 min", Test, ApprovedWindow)]
    [InlineData("none", "6 h", Test, ApprovedWindow)]
    [InlineData("none", "361 min", DoNotTest, TooOld)]
    [InlineData("ufh", "59 min", Test, TodaysRule)]
    [InlineData("ufh", "1 h", Test, TodaysRule)]
    [InlineData("ufh", "61 min", DoNotTest, TooOld)]
    [InlineData(null, "59 min", Test, TodaysRule)]
    [InlineData(null, "1 h", Test, TodaysRule)]
    [InlineData(null, "61 min", DoNotTest, TooOld)]
    [InlineData("doac", "1 h", Test, TodaysRule)]
    [InlineData("doac", "61 min", DoNotTest, TooOld)]
    public void A_window_runs_to_its_last_minute(
        string? group,
        string waited,
        BenchVerdict verdict,
        BenchReason reason
    )
    {
        var answer = Answer(Ask(waited, group), Approved);

        Assert.Equal((verdict, reason), (answer.Verdict, answer.Reason));
        Assert.Equal(group is "none" or "ufh", answer.KnowsGroup);
    }

    // Heparin's rule has two steps: whole blood 1 h, then the plasma taken off the cells by then up to 4 h. An unknown group may be heparin.
    [Theory]
    [InlineData("ufh", "210 min", "40 min", Test, TodaysRule)]
    [InlineData("ufh", "210 min", null, DoNotTest, TooOld)]
    [InlineData("ufh", "210 min", "59 min", Test, TodaysRule)]
    [InlineData("ufh", "210 min", "60 min", Test, TodaysRule)]
    [InlineData("ufh", "210 min", "61 min", DoNotTest, TooOld)]
    [InlineData("ufh", "239 min", "60 min", Test, TodaysRule)]
    [InlineData("ufh", "240 min", "60 min", Test, TodaysRule)]
    [InlineData("ufh", "241 min", "60 min", DoNotTest, TooOld)]
    [InlineData("ufh", "50 min", "55 min", Test, TodaysRule)]
    [InlineData(null, "240 min", "60 min", Test, TodaysRule)]
    [InlineData(null, "240 min", "61 min", DoNotTest, TooOld)]
    [InlineData(null, "241 min", "60 min", DoNotTest, TooOld)]
    [InlineData("none", "240 min", "1 min", Test, TodaysRule)]
    [InlineData("none", "241 min", "1 min", AskDirector, NotCovered)]
    public void Plasma_taken_off_in_time_has_a_rule_of_its_own(
        string? group,
        string waited,
        string? separated,
        BenchVerdict verdict,
        BenchReason reason
    )
    {
        var answer = Answer(
            Ask(waited, group) with
            {
                Separated = separated is null ? null : Time(separated),
            },
            Approved
        );

        Assert.Equal((verdict, reason), (answer.Verdict, answer.Reason));
    }

    [Fact]
    public void A_separation_after_the_test_or_before_collection_lengthens_nothing()
    {
        var question = Ask("210 min", "ufh");

        Assert.All(
            [Time("211 min"), -Time("1 min")],
            separated =>
                Assert.Equal(
                    TooOld,
                    Answer(question with { Separated = separated }, Approved).Reason
                )
        );
        Assert.Equal(Time("4 h"), Answer(question with { Separated = null }, Approved).AsPlasma);
    }

    [Fact]
    public void A_rule_that_a_decision_made_shorter_has_no_second_step()
    {
        var shorter = Approved with
        {
            Windows = [Heparin("1 h", null, null) with { Interim = Time("30 min") }],
        };

        var answer = Answer(Ask("2 h", "ufh") with { Separated = Time("20 min") }, shorter);

        Assert.Equal((DoNotTest, TooOld), (answer.Verdict, answer.Reason));
    }

    // The protocol: spun at most 1 h before the test, else it has not waited as whole blood.
    [Theory]
    [InlineData("5 h", "241 min", Test, ApprovedWindow)]
    [InlineData("5 h", "240 min", Test, ApprovedWindow)]
    [InlineData("5 h", "239 min", AskDirector, NotCovered)]
    [InlineData("4 h", "10 min", Test, TodaysRule)]
    public void A_window_of_whole_blood_holds_for_tubes_spun_just_before_the_test(
        string waited,
        string spun,
        BenchVerdict verdict,
        BenchReason reason
    )
    {
        var answer = Answer(Ask(waited) with { Spun = Time(spun) }, Approved);

        Assert.Equal((verdict, reason), (answer.Verdict, answer.Reason));
        Assert.Null(answer.Due);
    }

    [Fact]
    public void What_is_left_open_counts_as_not_true_where_nobody_reads_the_answer()
    {
        var question = Ask("5 h") with { Instrument = "AN1", Lot = "R-2601", Spun = Time("5 h") };
        BenchQuestion[] open =
        [
            question with
            {
                Instrument = null,
            },
            question with
            {
                Lot = null,
            },
            question with
            {
                Spun = null,
            },
        ];

        Assert.Equal(Test, Answer(question with { CountsOpenAsNotTrue = true }, Approved).Verdict);
        Assert.All(
            open,
            item =>
            {
                Assert.Equal(Test, Answer(item, Approved).Verdict);
                Assert.Equal(
                    AskDirector,
                    Answer(item with { CountsOpenAsNotTrue = true }, Approved).Verdict
                );
            }
        );
    }

    [Theory]
    [InlineData("AN1", "R-2602", RepeatTier.Reduced)]
    [InlineData("AN2", "R-2601", RepeatTier.Full)]
    [InlineData("AN2", "R-2602", RepeatTier.Full)]
    [InlineData(null, "R-2602", RepeatTier.Reduced)]
    [InlineData("AN2", null, RepeatTier.Full)]
    public void A_new_lot_asks_for_a_reduced_study_and_a_new_instrument_for_the_full_one(
        string? instrument,
        string? lot,
        RepeatTier due
    )
    {
        var answer = Answer(Ask("5 h") with { Instrument = instrument, Lot = lot }, Approved);

        Assert.Equal((NotCovered, due), (answer.Reason, answer.Due));
    }

    [Fact]
    public void An_unfit_tube_and_one_collected_after_its_test_are_not_tested()
    {
        var unfit = Answer(Ask("1 min") with { Unfit = "clotted" }, Approved);
        var negative = Answer(Ask("1 min") with { Waited = -Time("3 min") }, Approved);

        Assert.Equal((DoNotTest, TubeUnfit), (unfit.Verdict, unfit.Reason));
        Assert.Equal((DoNotTest, TimeUnknown), (negative.Verdict, negative.Reason));
    }

    [Fact]
    public void An_age_is_rounded_up_to_the_whole_minute()
    {
        var question = Ask("6 h");

        Assert.Equal(DoNotTest, At(TimeSpan.FromSeconds(1)).Verdict);
        Assert.Equal(DoNotTest, At(TimeSpan.FromTicks(1)).Verdict);
        Assert.Equal(Time("361 min"), At(TimeSpan.FromTicks(1)).Age);
        Assert.Equal(Test, At(TimeSpan.FromSeconds(-1)).Verdict);

        BenchAnswer At(TimeSpan more) =>
            Answer(question with { Waited = question.Waited + more }, Approved);
    }

    [Theory]
    [InlineData("none")]
    [InlineData("ufh")]
    [InlineData(null)]
    public void An_unknown_time_is_not_tested(string? group)
    {
        var answer = Answer(Ask("1 h", group) with { Waited = null }, Approved);

        Assert.Equal((DoNotTest, TimeUnknown), (answer.Verdict, answer.Reason));
    }

    // In force from 1 April 2026, to be reviewed by 31 March 2027; signed on 23 March 2026.
    [Theory]
    [InlineData("2026-03-22", "3 h", AskDirector, NoRule)]
    [InlineData("2026-03-23", "3 h", Test, TodaysRule)]
    [InlineData("2026-03-31", "5 h", DoNotTest, TooOld)]
    [InlineData("2026-04-01", "5 h", Test, ApprovedWindow)]
    [InlineData("2027-03-31", "5 h", Test, ApprovedWindow)]
    [InlineData("2027-04-01", "5 h", AskDirector, PastReview)]
    [InlineData("2027-04-01", "4 h", Test, TodaysRule)]
    [InlineData("2027-04-01", "361 min", DoNotTest, TooOld)]
    public void A_window_holds_from_its_first_day_to_the_day_of_its_review(
        string day,
        string waited,
        BenchVerdict verdict,
        BenchReason reason
    )
    {
        var answer = Answer(
            Ask(waited) with
            {
                Day = DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture),
            },
            Approved
        );

        Assert.Equal((verdict, reason), (answer.Verdict, answer.Reason));
    }

    [Fact]
    public void A_decision_without_a_first_day_holds_from_its_signature_on()
    {
        var approved = Approved with { Effective = null };

        Assert.Equal(Test, On(23).Verdict);
        Assert.Equal(AskDirector, On(22).Verdict);

        BenchAnswer On(int day) =>
            Answer(Ask("5 h") with { Day = new DateOnly(2026, 3, day) }, approved);
    }

    [Theory]
    [InlineData("AN1", "R-2601", "5 h", Test, ApprovedWindow)]
    [InlineData("AN1", "R-2602", "5 h", AskDirector, NotCovered)]
    [InlineData("AN2", "R-2601", "5 h", AskDirector, NotCovered)]
    [InlineData("AN1", "R-2602", "4 h", Test, TodaysRule)]
    [InlineData("AN1", "R-2602", "361 min", DoNotTest, TooOld)]
    public void Beyond_todays_rule_instrument_and_lot_are_those_of_the_study(
        string instrument,
        string lot,
        string waited,
        BenchVerdict verdict,
        BenchReason reason
    )
    {
        var answer = Answer(Ask(waited) with { Instrument = instrument, Lot = lot }, Approved);

        Assert.Equal((verdict, reason), (answer.Verdict, answer.Reason));
    }

    [Fact]
    public void What_was_not_recorded_covers_no_lot()
    {
        var window = None("4 h", "6 h", "6 h");
        var unrecorded = Approved with
        {
            Windows = [window with { Row = window.Row with { Reagents = [] } }],
        };

        Assert.Equal(NotCovered, Answer(Ask("5 h") with { Lot = "R-2601" }, unrecorded).Reason);
    }

    [Fact]
    public void A_declined_report_leaves_todays_rule()
    {
        var declined = Approved with
        {
            Standing = ReportStanding.Declined,
            Windows = [None("4 h", "8 h", null), Heparin("1 h", null, null)],
        };

        Assert.Equal(Test, Answer(Ask("4 h"), declined).Verdict);
        var answer = Answer(Ask("5 h"), declined);
        Assert.Equal((DoNotTest, TooOld), (answer.Verdict, answer.Reason));
        Assert.Equal(WindowStanding.Declined, Assert.Single(answer.From).Standing);
    }

    [Theory]
    [InlineData(null, "2 h")]
    [InlineData("2 h", null)]
    public void A_decision_shorter_than_todays_rule_shortens_it_and_no_review_makes_it_longer(
        string? approved,
        string? interim
    )
    {
        var window = None("4 h", "2 h", approved) with
        {
            Interim = interim is null ? null : Time(interim),
        };
        var shorter = Approved with { Windows = [window] };

        foreach (var day in new[] { Today, new DateOnly(2028, 1, 1) })
        {
            Assert.Equal(Test, Answer(Ask("2 h") with { Day = day }, shorter).Verdict);
            Assert.Equal(DoNotTest, Answer(Ask("121 min") with { Day = day }, shorter).Verdict);
        }

        // Another report with the longer rule of before changes nothing.
        Assert.Equal(
            DoNotTest,
            Answer(Ask("3 h"), shorter, Second(None("4 h", null, null))).Verdict
        );
        // A lot outside the study is no way around it.
        Assert.Equal(DoNotTest, Answer(Ask("3 h") with { Lot = "R-2602" }, shorter).Verdict);
    }

    [Fact]
    public void Of_two_claims_the_shorter_holds()
    {
        var longer = Second(None("4 h", "8 h", "8 h"));

        Assert.Equal(Test, Answer(Ask("6 h"), Approved, longer).Verdict);
        Assert.Equal(DoNotTest, Answer(Ask("7 h"), Approved, longer).Verdict);
        Assert.Equal(DoNotTest, Answer(Ask("7 h"), longer, Approved).Verdict);
    }

    [Fact]
    public void A_claim_for_another_lot_is_no_second_claim()
    {
        var window = None("4 h", "8 h", "8 h");
        var other = Second(window with { Row = window.Row with { Reagents = ["R-2602"] } });

        Assert.Equal(Test, Answer(Ask("7 h") with { Lot = "R-2602" }, Approved, other).Verdict);
        Assert.Equal(
            DoNotTest,
            Answer(Ask("7 h") with { Lot = "R-2601" }, Approved, other).Verdict
        );
        Assert.Equal(DoNotTest, Answer(Ask("7 h"), Approved, other).Verdict);
    }

    [Fact]
    public void A_report_that_replaces_another_takes_its_place_from_its_first_day_on()
    {
        var next = Second(None("4 h", "8 h", "8 h"), Heparin("1 h", null, null)) with
        {
            Replaces = "e33e04c400000000",
            Effective = new(2026, 6, 1),
        };

        Assert.Equal(Test, On(5, 31, "6 h").Verdict);
        Assert.Equal(DoNotTest, On(5, 31, "7 h").Verdict);
        Assert.Equal(Test, On(6, 1, "7 h").Verdict);

        BenchAnswer On(int month, int day, string waited) =>
            Answer(Ask(waited) with { Day = new DateOnly(2026, month, day) }, Approved, next);
    }

    [Fact]
    public void A_refusal_in_the_place_of_an_approval_ends_it()
    {
        var refusal = Second(None("4 h", "6 h", null)) with { Standing = ReportStanding.Declined };

        Assert.Equal(RefusedLater, Answer(Ask("5 h"), Approved, refusal).Reason);
        Assert.Equal(AskDirector, Answer(Ask("5 h"), Approved, refusal).Verdict);
        Assert.Equal(
            DoNotTest,
            Answer(Ask("5 h"), Approved, refusal with { Replaces = "e33e04c400000000" }).Verdict
        );
        Assert.Equal(
            DoNotTest,
            Answer(
                Ask("5 h"),
                Approved,
                refusal with
                {
                    Code = Approved.Code,
                    DecidedAgainAfter = SignedAt,
                }
            ).Verdict
        );
        // One that was refused before it was approved has been overtaken.
        Assert.Equal(
            Test,
            Answer(Ask("5 h"), Approved, refusal with { DecidedAt = SignedAt.AddDays(-1) }).Verdict
        );
    }

    [Theory]
    [InlineData("30 min")]
    [InlineData("5 h")]
    [InlineData("40 h")]
    public void A_report_that_cannot_be_verified_never_gives_an_answer(string waited)
    {
        var untrusted = Approved with { Standing = ReportStanding.NotTrusted, Why = "changed" };

        var alone = Answer(Ask(waited), untrusted);
        var beside = Answer(Ask(waited), Approved, untrusted with { File = "other.pdf" });
        var unread = Answer(Ask(waited), Approved, new("x.pdf", ReportStanding.NotTrusted));
        var elsewhere = Answer(Ask(waited), Approved, untrusted with { Analytes = ["DD"] });

        Assert.All(
            [alone, beside, unread],
            answer => Assert.Equal((AskDirector, ReportNotTrusted), (answer.Verdict, answer.Reason))
        );
        Assert.NotEqual(AskDirector, elsewhere.Verdict);
        Assert.NotEqual(Test, Answer(Ask(waited, null), Approved, untrusted).Verdict);
    }

    [Fact]
    public void An_undecided_report_gives_no_rule_and_takes_none_away()
    {
        var undecided = Approved with { Standing = ReportStanding.NotDecided, File = "u.pdf" };

        Assert.Equal(NoRule, Answer(Ask("1 h"), undecided).Reason);
        Assert.Equal(Test, Answer(Ask("5 h"), Approved, undecided).Verdict);
    }

    [Fact]
    public void A_decision_in_words_alone_is_read_by_the_director()
    {
        var inWords = Approved with
        {
            Windows = [None("4 h", "6 h", null) with { IsInWordsOnly = true }],
        };

        Assert.Equal(InWordsOnly, Answer(Ask("3 h"), inWords).Reason);
        Assert.Equal(AskDirector, Answer(Ask("5 h"), inWords).Verdict);
    }

    [Fact]
    public void One_code_for_two_storages_is_asked_about()
    {
        var cold = Second(
            None("4 h", "8 h", "8 h") with
            {
                StorageWords = "whole blood, 2 to 8 °C",
            }
        );

        Assert.Equal(TwoStorages, Answer(Ask("5 h"), Approved, cold).Reason);
    }

    [Fact]
    public void An_unknown_group_without_any_rule_for_heparin_is_asked_about()
    {
        var without = Approved with { Windows = [None("4 h", "6 h", "6 h")] };

        Assert.Equal(NoRuleForHeparin, Answer(Ask("30 min", null), without).Reason);
        Assert.Equal(DoNotTest, Answer(Ask("5 h", null), without).Verdict);
    }

    [Fact]
    public void Without_a_storage_the_strictest_answers()
    {
        var window = None("14 d", null, null);
        var frozen = Second(window with { Row = window.Row with { Storage = "frozen" } });

        Assert.Equal(
            DoNotTest,
            Answer(Ask("7 h") with { Storage = null }, Approved, frozen).Verdict
        );
        Assert.Equal(
            Test,
            Answer(Ask("7 h") with { Storage = "frozen" }, Approved, frozen).Verdict
        );
        var absent = Answer(Ask("1 h") with { Storage = "on-ice" }, Approved, frozen);
        Assert.Equal((AskDirector, NoRule), (absent.Verdict, absent.Reason));
        Assert.Equal(["frozen", "wb-rt"], absent.Known.Select(storage => storage.Code));
    }

    [Fact]
    public void An_analyte_without_a_rule_is_asked_about()
    {
        var answer = Answer(Ask("1 h") with { Storage = null } with { Group = null }, []);

        Assert.Equal((AskDirector, NoRule), (answer.Verdict, answer.Reason));
    }
}

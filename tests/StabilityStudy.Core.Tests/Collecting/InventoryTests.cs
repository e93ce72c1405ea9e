using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Collecting;

/// <summary>
/// Specimens are collected at 8:00; a baseline is tested within an hour, a delayed tube within half an hour of its time,
/// and spun at most an hour before.
/// </summary>
public sealed class InventoryTests
{
    private static readonly ImmutableHashSet<int> s_none = [];

    [Theory]
    [InlineData("08:10", TestStanding.DueNow, TestStanding.DueLater)]
    [InlineData("09:00", TestStanding.DueNow, TestStanding.DueLater)]
    [InlineData("09:01", TestStanding.Overdue, TestStanding.DueLater)]
    [InlineData("13:29", TestStanding.Overdue, TestStanding.DueLater)]
    [InlineData("13:30", TestStanding.Overdue, TestStanding.DueNow)]
    [InlineData("14:30", TestStanding.Overdue, TestStanding.DueNow)]
    [InlineData("14:31", TestStanding.Overdue, TestStanding.Overdue)]
    public void A_test_is_due_within_its_time_and_overdue_after_it(
        string at,
        TestStanding baseline,
        TestStanding delayed
    )
    {
        var inventory = At(at, SmallStudy.Of([6], ["- | -"]));

        Assert.Equal([baseline, delayed], inventory.Tests.Select(test => test.Standing));
        Assert.Equal(["baseline", "6 h"], inventory.Tests.Select(test => $"{test.Occasion}"));
    }

    [Fact]
    public void A_tube_is_spun_late_enough_for_a_test_at_the_end_of_its_time()
    {
        var test = At("08:10", SmallStudy.Of([6], ["30.0 | -"])).Tests[^1];

        Assert.Equal(Time("13:30"), test.Earliest);
        Assert.Equal(Time("14:30"), test.Latest);
        Assert.Equal(Time("13:30"), test.SpinFrom);
    }

    [Fact]
    public void What_has_a_result_is_tested_and_what_has_a_reason_is_lost()
    {
        var item = At(
            "20:00",
            SmallStudy.Of([6, 8], ["30.0 | 30.5 | CLOT", "30.0 | NT | -"])
        ).Groups[0];

        // S001 is of the next day.
        Assert.Equal(2, item.Specimens);
        Assert.Equal(3, item.Count(TestStanding.Tested));
        Assert.Equal(2, item.Count(TestStanding.Lost));
        Assert.Equal(1, item.Count(TestStanding.DueLater));
        Assert.Equal(0, item.Count(TestStanding.Overdue));
    }

    [Fact]
    public void A_row_that_is_there_before_its_tube_is_tested_is_no_loss()
    {
        var study = SmallStudy
            .Of([6], ["30.0 | 30.5"])
            .Row(
                0,
                6,
                row =>
                    row with
                    {
                        TestedAt = null,
                        Result = new MissingResult("", MissingReason.NoReportableResult),
                    }
            );

        Assert.Equal(TestStanding.DueLater, At("10:00", study).Tests[^1].Standing);
        Assert.Empty(Codes(study, "10:00"));
        Assert.Contains("no-delayed-result", Codes(study, "15:00"));
    }

    [Fact]
    public void A_tube_that_was_not_drawn_is_neither_due_nor_lost()
    {
        var study = SmallStudy.Of([6], ["30.0 | -"]);
        study = new(
            study.Inputs with
            {
                Facts = study.Inputs.Facts with
                {
                    NotDrawn =
                    [
                        new("S000", SmallProtocol.At(6), null, "vein", "LS1", new(2026, 3, 2), 9),
                    ],
                },
            }
        );

        Assert.Equal(TestStanding.NotPlanned, At("20:00", study).Tests[^1].Standing);
    }

    [Fact]
    public void A_time_of_collection_in_question_makes_nothing_overdue()
    {
        var study = SmallStudy.Of([6], ["30.0 | -"]);

        var inventory = CollectionCount.Of(
            study.Inputs,
            Time("20:00"),
            ImmutableHashSet.Create(study.Inputs.Tubes[0].SourceRow)
        );

        Assert.Equal(TestStanding.InQuestion, inventory.Tests[^1].Standing);
    }

    [Fact]
    public void Where_each_specimen_is_tested_at_some_times_only_the_next_ones_are_due()
    {
        var study = OfSomeTimes(["30.0 | - | - | -"]);

        Assert.Equal(
            [TestStanding.DueLater, TestStanding.DueLater, TestStanding.NotPlanned],
            Delayed(study, "09:00")
        );
        Assert.Equal(
            [TestStanding.NotPlanned, TestStanding.DueLater, TestStanding.DueLater],
            Delayed(study, "15:00")
        );
        Assert.Equal(
            [TestStanding.NotPlanned, TestStanding.Overdue, TestStanding.DueLater],
            Delayed(study, "17:00")
        );
        Assert.Equal(
            [TestStanding.Tested, TestStanding.DueLater, TestStanding.NotPlanned],
            Delayed(OfSomeTimes(["30.0 | 30.5 | - | -"]), "15:00")
        );
    }

    [Fact]
    public void What_is_due_is_not_asked_for_and_what_is_overdue_is()
    {
        var study = SmallStudy.Of([6], ["30.0 | -", "30.0 | 30.5"]);

        Assert.Empty(Codes(study, "14:00"));
        Assert.Equal(["delayed-result-missing"], Codes(study, "14:31"));
        Assert.Contains("delayed-result-missing", Codes(study, at: null));
    }

    [Fact]
    public void What_is_seen_at_the_test_is_not_asked_for_before()
    {
        var study = SmallStudy
            .Of([6], ["30.0 | -"])
            .Tube(0, 6, tube => tube with { Clot = ClotCheck.NotRecorded, SpunAt = null });

        Assert.DoesNotContain("clot-not-recorded", Codes(study, "10:00"));
        Assert.Contains("clot-not-recorded", Codes(study, at: null));

        var onASheet = SmallStudy
            .Of([6], ["30.0 | 30.5"])
            .Tube(0, 6, tube => tube with { Clot = ClotCheck.NotRecorded, SpunAt = null })
            .Row(
                0,
                6,
                row =>
                    row with
                    {
                        TestedAt = null,
                        Result = new MissingResult("", MissingReason.NoReportableResult),
                    }
            );
        Assert.DoesNotContain("clot-not-recorded", Codes(onASheet, "10:00"));
    }

    [Fact]
    public void A_run_of_the_day_may_get_its_control_later_and_one_of_yesterday_may_not()
    {
        var study = SmallStudy.Of([6], ["30.0 | -"]);
        study = new(
            study.Inputs with
            {
                Protocol = study.Inputs.Protocol with { Controls = ControlRule.EveryRun },
            }
        );

        Assert.DoesNotContain("run-without-control", Codes(study, "10:00"));
        Assert.Contains("run-without-control", Codes(study, "10:00", days: 1));
        Assert.Contains("run-without-control", Codes(study, at: null));
    }

    [Fact]
    public void Baselines_are_held_against_the_planned_range_and_the_levels_judged()
    {
        var study = SmallStudy.Of([6], ["30.0 | -", "70.0 | -", "58.0 | -", "QNS | -"]);
        var protocol = study.Inputs.Protocol;
        study = new(
            study.Inputs with
            {
                Protocol = protocol with
                {
                    Analytes =
                    [
                        protocol.Analytes[0] with
                        {
                            PlannedRanges = [new("none", 25, 110)],
                        },
                    ],
                    Criteria =
                    [
                        .. protocol.Criteria,
                        new DecisionLevelCriterion(
                            "levels",
                            [new LimitChoice("aPTT", "bias")],
                            [],
                            0.90,
                            [60m]
                        ),
                    ],
                },
            }
        );

        var range = Assert.Single(At("20:00", study).Ranges);

        Assert.Equal((3, 30.0m, 70.0m), (range.Count, range.Lowest, range.Highest));
        Assert.Equal((25m, 110m), (range.Planned!.Lowest, range.Planned.Highest));
        Assert.Equal([new LevelSoFar(60, 2, 1, 3)], range.Levels);
    }

    [Fact]
    public void A_specimen_whose_baseline_failed_does_not_count_and_one_whose_baseline_is_awaited_may()
    {
        var study = SmallStudy.Of([6], ["QNS | -", "- | -"]);

        Assert.Equal(1, At("08:10", study, days: 1).Groups[0].Unusable);
        Assert.Equal(2, At("20:00", study, days: 1).Groups[0].Unusable);
    }

    [Fact]
    public void Specimens_collected_after_the_moment_are_counted_as_such() =>
        Assert.Equal(1, At("10:00", SmallStudy.Of([6], ["30.0 | -", "30.0 | -"])).CollectedLater);

    private static SmallStudy OfSomeTimes(ImmutableArray<string> specimens)
    {
        var study = SmallStudy.Of([6, 8, 12], specimens);
        return new(
            study.Inputs with
            {
                Protocol = study.Inputs.Protocol with { DelaysPerSpecimen = 2 },
            }
        );
    }

    private static IEnumerable<TestStanding> Delayed(SmallStudy study, string at) =>
        At(at, study).Tests.Skip(1).Select(test => test.Standing);

    private static string[] Codes(SmallStudy study, string? at, int days = 0)
    {
        string[] about =
        [
            "delayed-result-missing",
            "no-delayed-result",
            "baseline-invalid",
            "clot-not-recorded",
            "run-without-control",
        ];
        return
        [
            .. (
                at is null
                    ? StudyChecks.Of(study.Inputs, "")
                    : StudyChecks.WhileCollecting(study.Inputs, "", Time(at).AddDays(days)).Queries
            )
                .Select(query => query.Code)
                .Where(about.Contains)
                .Distinct(),
        ];
    }

    private static CollectionInventory At(string time, SmallStudy study, int days = 0) =>
        CollectionCount.Of(study.Inputs, Time(time).AddDays(days), s_none);

    private static DateTimeOffset Time(string time) =>
        new(
            new DateOnly(2026, 3, 2),
            TimeOnly.ParseExact(time, "HH:mm", CultureInfo.InvariantCulture),
            TimeSpan.Zero
        );
}

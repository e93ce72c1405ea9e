using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class RobustnessTests
{
    private static RobustnessLine? Line(SmallStudy study, RobustnessKind kind) =>
        study.Cell().Robustness.SingleOrDefault(line => line.Question.Kind == kind);

    [Fact]
    public void At_the_most_outside_one_more_changes_the_conclusion()
    {
        var study = SmallStudy.Quiet(40).Result(0, 6, "CLOT").Result(1, 6, "CLOT");

        var line = Line(study, RobustnessKind.OneMoreOutside)!;

        Assert.Equal((Conclusion.Inconclusive, true), (line.Conclusion, line.Changes));
        Assert.Equal(RobustnessDirection.AwayFromSupported, line.Direction);
        Assert.Null(Line(study, RobustnessKind.FewestMoreOutside));
    }

    [Fact]
    public void Below_it_the_line_says_how_many_more_would_change_it()
    {
        var study = SmallStudy.Quiet(40);

        Assert.False(Line(study, RobustnessKind.OneMoreOutside)!.Changes);
        var fewest = Line(study, RobustnessKind.FewestMoreOutside)!;
        Assert.Equal(3, fewest.Question.Count);
        Assert.True(fewest.Changes);
    }

    [Fact]
    public void Leaving_out_one_subject_of_a_quiet_study_changes_nothing()
    {
        var line = Line(SmallStudy.Quiet(40), RobustnessKind.OneSubjectLeftOut)!;

        Assert.Equal((Conclusion.Supported, false), (line.Conclusion, line.Changes));
    }

    [Fact]
    public void A_mean_that_hangs_on_one_subject_says_so()
    {
        // One rise beyond all others carries the interval over the limit; without it the mean stays inside.
        var line = Line(
            SmallStudy.Quiet(40).Result(3, 6, "140.0"),
            RobustnessKind.OneSubjectLeftOut
        )!;

        Assert.True(line.Changes);
        Assert.Equal((40, 1), (line.Question.Count, line.Question.Changing));
        Assert.Equal(Conclusion.Supported, line.Conclusion);
        Assert.Equal(
            new CriterionOtherwise(
                "PS003",
                "mean",
                new IntervalReason(IntervalPlace.Inside, new MeanChangeFigure())
            ),
            line.Question.Otherwise
        );
    }

    [Fact]
    public void Leaving_out_a_subject_does_not_cost_a_collection_day()
    {
        var study = SmallStudy
            .Quiet(40)
            .Tubes(tube => tube)
            .Protocol(protocol => protocol with { MinimumDays = 10 });

        Assert.False(Line(study, RobustnessKind.OneSubjectLeftOut)!.Changes);
    }

    [Fact]
    public void Pairs_left_out_are_asked_about_as_if_they_had_failed()
    {
        var study = SmallStudy.Quiet(43).Exclude(0, 6).Exclude(1, 6).Result(2, 0, "QNS");

        var line = Line(study, RobustnessKind.LeftOutCountedOutside)!;

        Assert.Equal(3, line.Question.Count);
        Assert.Equal((Conclusion.Inconclusive, true), (line.Conclusion, line.Changes));
    }

    [Fact]
    public void Results_beyond_a_limit_are_asked_about_at_the_limit() =>
        Assert.NotNull(
            Line(
                SmallStudy.Quiet(40).Result(0, 0, ">180").Result(0, 6, ">180"),
                RobustnessKind.BeyondIntervalAtTheLimit
            )
        );

    [Fact]
    public void The_percent_mean_is_asked_about_as_a_log_ratio() =>
        Assert.False(Line(SmallStudy.Quiet(40), RobustnessKind.OtherScale)!.Changes);

    /// <summary>Each specimen that the runs could have moved out of its class is one fewer that may still change.</summary>
    [Fact]
    public void Further_changes_are_counted_with_every_change_moved_by_the_runs()
    {
        var classes = new ClassificationResult(
            "kept",
            Verdict.Met,
            [],
            0.95,
            0.85,
            ["negative", "positive"],
            [],
            100,
            100,
            0,
            0,
            0,
            0,
            null,
            [],
            ShareKept.Bounds(100, 100, 0.95)
        );

        Assert.Equal(Fewest(classes) - 4, Fewest(classes with { ChangedIfMoved = 4 }));

        static int? Fewest(ClassificationResult result) =>
            Assert.Single(ClassificationSensitivity.Of([result])).Question.Count;
    }

    [Fact]
    public void Without_criteria_there_is_nothing_to_overturn() =>
        Assert.Empty(SmallStudy.Quiet(40).Criteria().Cell().Robustness);

    [Fact]
    public void One_more_outside_does_not_depend_on_the_order_of_specimens()
    {
        // Those at the front agree beyond a limit, those at the back are measured.
        var front = SmallStudy.Quiet(60);
        var back = SmallStudy.Quiet(60);
        for (var i = 0; i < 21; i++)
        {
            front = front.Result(i, 0, ">180").Result(i, 6, ">180");
            back = back.Result(59 - i, 0, ">180").Result(59 - i, 6, ">180");
        }

        Assert.Equal(
            Line(front, RobustnessKind.FewestMoreOutside)?.Question,
            Line(back, RobustnessKind.FewestMoreOutside)?.Question
        );
        Assert.Equal(
            Line(front, RobustnessKind.OneMoreOutside)!.Conclusion,
            Line(back, RobustnessKind.OneMoreOutside)!.Conclusion
        );
    }

    [Fact]
    public void Outliers_leave_the_mean_and_stay_in_the_share()
    {
        var line = Line(
            SmallStudy.Quiet(40).Result(3, 6, "43.0").Result(4, 6, "CLOT").Result(5, 6, "CLOT"),
            RobustnessKind.WithoutFlaggedOutliers
        )!;

        // Without the outlier in the share, two of 39 would be outside and the cell supported.
        Assert.Equal(Conclusion.Inconclusive, line.Conclusion);
    }

    [Fact]
    public void Excluded_pairs_are_put_back_at_what_was_measured()
    {
        var study = SmallStudy
            .Quiet(43)
            .Result(0, 6, "45.0")
            .Result(1, 6, "45.0")
            .Result(2, 6, "45.0")
            .Exclude(0, 6)
            .Exclude(1, 6)
            .Exclude(2, 6);

        var line = Line(study, RobustnessKind.LeftOutAtMeasuredValues)!;

        Assert.Equal(new ExcludedPairs(Count: 3, Outside: 3), line.Question.Excluded);
        Assert.True(line.Changes);
    }

    [Fact]
    public void Specimens_that_were_not_eligible_are_asked_about_too()
    {
        var study = SmallStudy.Quiet(43);
        for (var i = 0; i < 3; i++)
        {
            study = study.Tube(i, 6, tube => tube with { FillPercent = 10 });
        }

        Assert.Equal(3, Line(study, RobustnessKind.LeftOutCountedOutside)!.Question.Count);
    }

    [Fact]
    public void A_result_missing_without_a_reason_counts_outside_already() =>
        Assert.Null(
            Line(SmallStudy.Quiet(40).WithoutRow(0, 6), RobustnessKind.LeftOutCountedOutside)
        );

    [Fact]
    public void The_other_scale_says_which_way()
    {
        Assert.Equal(
            ChangeScale.LogRatio,
            Line(SmallStudy.Quiet(40), RobustnessKind.OtherScale)!.Question.Scale
        );
        Assert.Equal(
            ChangeScale.Percent,
            Line(
                SmallStudy
                    .Quiet(40)
                    .Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.LogRatio }),
                RobustnessKind.OtherScale
            )!.Question.Scale
        );
    }

    [Theory]
    [InlineData(RobustnessKind.MedianInPlaceOfMean)]
    [InlineData(RobustnessKind.HodgesLehmannInPlaceOfMean)]
    public void Another_location_changes_nothing_in_a_quiet_study(RobustnessKind kind) =>
        Assert.False(Line(SmallStudy.Quiet(40), kind)!.Changes);

    [Fact]
    public void Coarse_reporting_leaves_no_room_for_the_walsh_averages() =>
        Assert.Null(
            Line(
                SmallStudy.Quiet(40).Analyte(analyte => analyte with { Decimals = 0 }),
                RobustnessKind.HodgesLehmannInPlaceOfMean
            )
        );
}

using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class RobustnessTests
{
    private static RobustnessLine? Line(SmallStudy study, string code) =>
        study.Cell().Robustness.SingleOrDefault(line => line.Code == code);

    [Fact]
    public void At_the_most_outside_one_more_changes_the_conclusion()
    {
        var study = SmallStudy.Quiet(40).Result(0, 6, "CLOT").Result(1, 6, "CLOT");

        var line = Line(study, "one-more-outside")!;

        Assert.Equal((Conclusion.Inconclusive, true), (line.Conclusion, line.Changes));
        Assert.Null(Line(study, "fewest-more-outside"));
    }

    [Fact]
    public void Below_it_the_line_says_how_many_more_would_change_it()
    {
        var study = SmallStudy.Quiet(40);

        Assert.False(Line(study, "one-more-outside")!.Changes);
        var fewest = Line(study, "fewest-more-outside")!;
        Assert.StartsWith("if 3 more specimens", fewest.Question, StringComparison.Ordinal);
        Assert.True(fewest.Changes);
    }

    [Fact]
    public void Leaving_out_one_subject_of_a_quiet_study_changes_nothing()
    {
        var line = Line(SmallStudy.Quiet(40), "one-subject-left-out")!;

        Assert.Equal((Conclusion.Supported, false), (line.Conclusion, line.Changes));
    }

    [Fact]
    public void A_mean_that_hangs_on_one_subject_says_so()
    {
        // One large change toward the limit makes the changes skewed; without it they are not.
        var line = Line(SmallStudy.Quiet(40).Result(3, 6, "43.0"), "one-subject-left-out")!;

        Assert.True(line.Changes);
        Assert.Contains("1 of 40 would change", line.Question, StringComparison.Ordinal);
        Assert.Equal(Conclusion.Supported, line.Conclusion);
    }

    [Fact]
    public void Leaving_out_a_subject_does_not_cost_a_collection_day()
    {
        var study = SmallStudy
            .Quiet(40)
            .Tubes(tube => tube)
            .Protocol(protocol => protocol with { MinimumDays = 10 });

        Assert.False(Line(study, "one-subject-left-out")!.Changes);
    }

    [Fact]
    public void Pairs_left_out_are_asked_about_as_if_they_had_failed()
    {
        var study = SmallStudy.Quiet(43).Exclude(0, 6).Exclude(1, 6).Result(2, 6, "QNS");

        var line = Line(study, "left-out-counted-outside")!;

        Assert.Contains("3 pairs", line.Question, StringComparison.Ordinal);
        Assert.Equal((Conclusion.Inconclusive, true), (line.Conclusion, line.Changes));
    }

    [Fact]
    public void Results_beyond_a_limit_are_asked_about_at_the_limit() =>
        Assert.NotNull(
            Line(
                SmallStudy.Quiet(40).Result(0, 0, ">180").Result(0, 6, ">180"),
                "beyond-interval-at-the-limit"
            )
        );

    [Fact]
    public void The_percent_mean_is_asked_about_as_a_log_ratio() =>
        Assert.False(Line(SmallStudy.Quiet(40), "other-scale")!.Changes);

    [Fact]
    public void Without_criteria_there_is_nothing_to_overturn() =>
        Assert.Empty(SmallStudy.Quiet(40).Criteria().Cell().Robustness);
}

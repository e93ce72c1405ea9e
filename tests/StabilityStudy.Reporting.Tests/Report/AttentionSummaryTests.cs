using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class AttentionSummaryTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void The_gravest_kinds_come_first_and_the_others_are_counted()
    {
        var analysis = OddStudies.All["40 pairs"] with
        {
            Queries =
            [
                FirstPageParts.Query("a-last-code"),
                FirstPageParts.Query("unexpected-code"),
                FirstPageParts.Query("outlier-flagged"),
                FirstPageParts.Query("outlier-flagged"),
                FirstPageParts.Query("lot-not-recorded"),
                FirstPageParts.Query("instrument-differs-within-pair"),
                FirstPageParts.Query("run-without-control"),
                FirstPageParts.Query("exclusion-after-result"),
            ],
        };
        var lines = FirstPageParts.Attentions(analysis);

        Assert.Equal(
            ["Message of exclusion-after-result."],
            lines.Where(line => line.Severity == "Attention").Select(line => line.Text)
        );
        Assert.Equal(
            "7 further: \"Data queries\", page 88.",
            Assert.Single(lines, line => line.Severity == "More").Text
        );
    }

    [Theory]
    [InlineData(6, "No anticoagulant at 6 h: it is so.")]
    [InlineData(null, "No anticoagulant: it is so.")]
    public void What_a_query_is_about_is_named_as_elsewhere_on_page_1(int? hours, string expected)
    {
        var analysis = OddStudies.All["40 pairs"];
        var key = analysis.Sequences[0].Cells[0].Key;
        var query = FirstPageParts.Query("spread-below-noise") with
        {
            Text = "it is so.",
            Scope = QueryScope.Of(key) with
            {
                TimePoint = hours is { } delay ? new TimePoint(TimeSpan.FromHours(delay)) : null,
            },
        };

        Assert.Equal(
            expected,
            Assert
                .Single(
                    FirstPageParts.Attentions(analysis with { Queries = [query] }),
                    line => line.Severity == "Attention"
                )
                .Text
        );
    }

    [Fact]
    public void What_would_take_away_support_is_named_with_its_direction()
    {
        var analysis = WithLine(
            Conclusion.Supported,
            new RobustnessLine(
                new(RobustnessKind.LeftOutAtMeasuredValues, 13),
                Conclusion.NotSupported,
                true
            )
        );

        Assert.Contains(
            "Would be not supported with 13 pairs left out put back at the measured values: No anticoagulant at 6 h.",
            Assert
                .Single(FirstPageParts.Attentions(analysis), line => line.Severity == "Rests on")
                .Text,
            Comparison
        );
    }

    [Fact]
    public void What_would_change_an_open_time_point_is_named_too()
    {
        var analysis = WithLine(
            Conclusion.Inconclusive,
            new RobustnessLine(
                new(RobustnessKind.WithoutFlaggedOutliers, 1),
                Conclusion.Supported,
                true
            )
        );

        Assert.Contains(
            "Would be supported with the one flagged outlier left out of the mean; the share keeps every specimen: No anticoagulant at 6 h.",
            Assert
                .Single(FirstPageParts.Attentions(analysis), line => line.Severity == "Still open")
                .Text,
            Comparison
        );
    }

    [Fact]
    public void Without_a_lock_nothing_shows_that_the_criteria_came_first()
    {
        var line = FirstPageParts.Attentions(OddStudies.All["40 pairs"])[0];

        Assert.Equal(
            "Not locked: nothing shows that the criteria came before the data.",
            line.Text
        );
    }

    [Fact]
    public void Only_the_approver_has_choices_to_tick()
    {
        var boxes = FirstPageParts
            .Blocks(OddStudies.All["40 pairs"])
            .OfType<SignatureBoxes>()
            .Single()
            .Boxes;

        Assert.Empty(boxes[0].Choices);
        Assert.Equal(3, boxes[1].Choices.Length);
        Assert.Contains(
            boxes[1].Choices,
            choice => choice.StartsWith("approve shorter or with conditions", Comparison)
        );
    }

    [Fact]
    public void The_cautions_that_bear_on_the_decision_stand_on_page_1()
    {
        var cautions = Assert.Single(
            FirstPageParts.Blocks(OddStudies.All["40 pairs"]).OfType<Paragraph>(),
            paragraph => paragraph.Text.Contains("medical director decides", Comparison)
        );

        Assert.Contains("accreditor's rules prevail", cautions.Text, Comparison);
        Assert.Contains("Holds only for what was studied", cautions.Text, Comparison);
    }

    private static StudyAnalysis WithLine(Conclusion conclusion, RobustnessLine line) =>
        FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell => cell with { Conclusion = conclusion, Robustness = [line] }
        );
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Certainty;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>What the report says of limits and criteria can be checked against the rules.</summary>
public sealed class CriterionTextTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void Two_planned_looks_share_the_chance_of_error()
    {
        var analysis = OddStudies.All["40 pairs"];
        var planned = analysis with
        {
            Protocol = analysis.Protocol with
            {
                PlannedLooks = 2,
                Criteria =
                [
                    .. analysis.Protocol.Criteria.Select(criterion =>
                        criterion is IndividualCriterion
                            ? criterion with
                            {
                                ConfidenceLevel = 0.975,
                            }
                            : criterion with
                            {
                                ConfidenceLevel = 0.95,
                            }
                    ),
                ],
            },
        };

        Assert.Contains("two looks", ErrorControl.Of(planned), Comparison);
        Assert.Contains("is then about 5 %", ErrorControl.Of(planned), Comparison);
    }

    [Fact]
    public void A_log_ratio_limit_shows_both_of_its_ends()
    {
        var analysis = WithBias(ChangeScale.LogRatio, 7.5m, null);
        var table = CriterionTable.Of(FirstCell(analysis), analysis.Protocol, Names(analysis));

        // 100 ln 0.925 and 100 ln 1.075.
        Assert.Contains("−7.7962 to +7.2321", table.Rows[0].Cells[1].Text, Comparison);
        Assert.Contains("±7.5 %", table.Rows[0].Cells[1].Text, Comparison);
    }

    [Fact]
    public void A_refused_mean_is_still_shown_with_the_limit_of_the_protocol()
    {
        var analysis = WithBias(ChangeScale.Percent, null, 2m);
        var table = CriterionTable.Of(FirstCell(analysis), analysis.Protocol, Names(analysis));

        Assert.Contains("±2 s", table.Rows[0].Cells[1].Text, Comparison);
        Assert.DoesNotContain("±0", table.Rows[0].Cells[1].Text, Comparison);
    }

    [Fact]
    public void A_rule_on_the_estimate_alone_is_labeled()
    {
        var analysis = StudyRows.Analyze(
            StudyRows.Protocol() with
            {
                Criteria =
                [
                    new BiasCriterion("mean", [new("aPTT", "bias")], [], 0.9, ChangeScale.Percent)
                    {
                        Rule = DecisionRule.PointOnly,
                    },
                ],
            },
            OddStudies.Specimens(40, "none")
        );
        var table = CriterionTable.Of(FirstCell(analysis), analysis.Protocol, Names(analysis));

        Assert.Contains("no error control", table.Rows[0].Cells[1].Text, Comparison);
        Assert.Contains("No criterion controls", ErrorControl.Of(analysis), Comparison);
    }

    [Theory]
    [InlineData("40 pairs", "one sequence")]
    [InlineData("three analytes", "3 sequences of this study")]
    [InlineData("three analytes", "1 − 0.95³, about 14 %")]
    public void Error_control_is_stated_for_the_number_of_sequences(string name, string expected) =>
        Assert.Contains(expected, ErrorControl.Of(OddStudies.All[name]), Comparison);

    [Theory]
    [InlineData("fewer than 5 collection days, baseline runs or delayed runs")]
    [InlineData("one recorded run, at most 1 h apart")]
    [InlineData("lengthens the interval")]
    [InlineData("corrected by the bridging plasma")]
    [InlineData("the change depends on the level")]
    [InlineData("all changes are the same")]
    [InlineData("uncounted pairs")]
    [InlineData("every undecidable specimen")]
    [InlineData("two results beyond the same limit")]
    [InlineData("more than 20 % of the received specimens meant to be tested there are left out")]
    [InlineData("the protocol keeps control results elsewhere")]
    public void Every_doubt_is_among_the_rules(string expected)
    {
        var rules = RulesSection
            .Of(OddStudies.All["40 pairs"], full: false)
            .Blocks.OfType<Bullets>()
            .SelectMany(list => list.Items);

        Assert.Contains(rules, rule => rule.Contains(expected, Comparison));
    }

    [Fact]
    public void The_interval_is_said_to_span_both()
    {
        var text = CriterionWords
            .OfRule(StudyRows.Protocol().Criteria[0], StudyRows.Protocol())
            .MetWhen;

        Assert.Contains(
            "spans the intervals by specimens, collection days, runs and persons",
            text,
            Comparison
        );
    }

    internal static StudyAnalysis WithBias(ChangeScale scale, decimal? percent, decimal? amount) =>
        StudyRows.Analyze(
            StudyRows.Protocol() with
            {
                Limits = [new Limit("bias", percent, amount, "invented")],
                Criteria = [new BiasCriterion("mean", [new("aPTT", "bias")], [], 0.9, scale)],
            },
            OddStudies.Specimens(40, "none")
        );

    internal static SequenceNames Names(StudyAnalysis analysis) =>
        SequenceNames.Of(analysis, analysis.Sequences[0]);

    internal static Cell FirstCell(StudyAnalysis analysis) => analysis.Sequences[0].Cells[0];
}

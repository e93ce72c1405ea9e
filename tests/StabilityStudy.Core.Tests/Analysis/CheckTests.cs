using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class CheckTests
{
    /// <summary>Every kind of pair, each with a delayed result that stands nowhere else.</summary>
    private static readonly SmallStudy s_study = SmallStudy
        .Of(
            [6],
            [
                "30.0 | 61.1",
                "30.0 | 62.2",
                "QNS | 63.3",
                "30.0 | 64.4",
                "30.0 | 65.5",
                "30.0 | >166",
                "30.0 | CLOT",
            ]
        )
        .Exclude(0, 6)
        .Row(1, 6, row => row with { TestedAt = row.TestedAt?.AddHours(3) })
        .Tube(3, 6, tube => tube with { FillPercent = 10 })
        .Row(4, 6, row => row with { Flag = "E7" })
        .Again(4, 6, row => row with { Flag = "", TestedAt = row.TestedAt?.AddMinutes(5) });

    [Fact]
    public void No_result_is_given_away_while_specimens_are_collected()
    {
        var queries = StudyChecks.Of(s_study.Inputs, "");

        Assert.Superset(
            new HashSet<string>([
                "pair-excluded",
                "outside-timing",
                "baseline-invalid",
                "specimen-ineligible",
                "delayed-tube-failed",
                "rerun-without-reason",
                "left-measuring-interval",
            ]),
            queries.Select(query => query.Code).ToHashSet()
        );
        Assert.All(
            queries,
            query =>
                Assert.DoesNotMatch(
                    "6[1-5]\\.|166|outside the limit|changed from",
                    query.Observed + query.Message + query.Action
                )
        );
    }

    [Fact]
    public void The_word_for_a_missing_result_stays() =>
        Assert.Contains(
            StudyChecks.Of(s_study.Inputs, ""),
            query => query is { Code: "delayed-tube-failed", Observed: "CLOT" }
        );

    [Fact]
    public void The_analysis_says_how_large_the_change_of_an_excluded_pair_was() =>
        Assert.Contains(
            "its result changed from 30.0 to 61.1 (+103.7 %), outside the limit each.",
            Single("pair-excluded").Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_delayed_tube_alone_that_is_ineligible_is_on_the_first_page() =>
        Assert.Equal(Severity.Attention, Single("specimen-ineligible").Severity);

    [Fact]
    public void A_draw_that_is_ineligible_is_noted() =>
        Assert.Equal(
            Severity.Note,
            Assert
                .Single(
                    SmallStudy
                        .Quiet(10)
                        .Tubes(tube =>
                            tube.Specimen == "S003" ? tube with { FillPercent = 10 } : tube
                        )
                        .Analyze()
                        .Queries,
                    query => query.Code == "specimen-ineligible"
                )
                .Severity
        );

    [Fact]
    public void A_missing_baseline_beside_a_delayed_result_is_on_the_first_page()
    {
        var query = Single("baseline-invalid");

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains(
            "although the delayed tube has a result",
            query.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void An_outlier_is_never_a_reason_to_exclude()
    {
        var query = Assert.Single(
            SmallStudy.Quiet(40).Result(3, 6, "43.0").Analyze().Queries,
            query => query.Code == "outlier-flagged"
        );

        Assert.DoesNotContain("exclude", query.Action, StringComparison.Ordinal);
        Assert.EndsWith("the pair stays.", query.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(6, 1)]
    public void Many_queries_of_one_kind_in_a_cell_are_said_once(int late, int expected)
    {
        var study = SmallStudy.Quiet(40);
        for (var i = 0; i < late; i++)
        {
            study = study.Row(i, 6, row => row with { TestedAt = row.TestedAt?.AddHours(3) });
        }

        var queries = study.Analyze().Queries.Where(query => query.Code == "outside-timing");

        Assert.Equal(expected, queries.Count());
        if (expected == 1)
        {
            Assert.Contains(
                "6 specimens, S000, S001, S002, S003, S004 and 1 more",
                queries.Single().Message,
                StringComparison.Ordinal
            );
        }
    }

    private static DataQuery Single(string code) =>
        Assert.Single(s_study.Analyze().Queries, query => query.Code == code);
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>(30.0/12.0)^1.2 = 3.0028…, by hand: 1.2·ln 2.5 = 1.09955, e^1.09955 = 3.0028.</summary>
public sealed class RatioQueryTests
{
    private static SmallStudy Study(string ratio, decimal? isi = 1.2m, string first = "30.0")
    {
        var study = SmallStudy.Of([6], [$"{first} | 30.0"]);
        var time = study.Inputs.Protocol.Analytes[0] with { Id = "PT" };
        return new(
            study.Inputs with
            {
                Protocol = study.Inputs.Protocol with
                {
                    Analytes =
                    [
                        time,
                        time with
                        {
                            Id = "INR",
                            Decimals = 2,
                            RatioOf = "PT",
                            MeasuringInterval = null,
                        },
                    ],
                },
                Facts = study.Inputs.Facts with
                {
                    Lots =
                    [
                        new Lot("R1", "reagent", "PT", null) { Isi = isi, MeanNormalTime = 12.0m },
                    ],
                },
                Results =
                [
                    .. study.Inputs.Results.Select(row => row with { Analyte = "PT" }),
                    .. study.Inputs.Results.Select(row =>
                        row with
                        {
                            Analyte = "INR",
                            SourceRow = row.SourceRow + 10,
                            Result = SmallRows.Reported(row.Occasion.IsBaseline ? ratio : "3.00"),
                        }
                    ),
                ],
            }
        );
    }

    private static DataQuery[] Of(SmallStudy study, string code) =>
        [.. InputQueries.Of(study.Inputs).Where(query => query.Code == code)];

    [Theory]
    [InlineData("3.00", 0)]
    [InlineData("3.01", 0)]
    [InlineData("2.99", 0)]
    [InlineData("3.02", 1)]
    [InlineData("2.98", 1)]
    public void A_ratio_may_differ_by_one_step_from_the_recomputed_one(string ratio, int expected)
    {
        var queries = Of(Study(ratio), "ratio-disagrees");

        Assert.Equal(expected, queries.Length);
        Assert.All(
            queries,
            query =>
            {
                Assert.Equal(Severity.Attention, query.Severity);
                Assert.Equal(12, query.Source.Line);
            }
        );
    }

    [Theory]
    [InlineData("30.0", ">2.50", 0)]
    [InlineData("30.0", ">3.01", 0)]
    [InlineData("30.0", ">3.02", 1)]
    [InlineData("30.0", "<2.98", 1)]
    [InlineData("30.0", "<4.00", 0)]
    [InlineData(">30.0", "2.98", 1)]
    [InlineData(">30.0", "8.00", 0)]
    [InlineData(">30.0", "<2.98", 1)]
    [InlineData(">30.0", ">9.00", 0)]
    [InlineData("<30.0", "3.02", 1)]
    [InlineData("<30.0", "1.10", 0)]
    public void A_result_beyond_a_limit_disagrees_where_no_value_there_fits(
        string time,
        string ratio,
        int expected
    ) => Assert.Equal(expected, Of(Study(ratio, first: time), "ratio-disagrees").Length);

    [Theory]
    [InlineData("NT", 5, 1)]
    [InlineData("NT", 4, 0)]
    [InlineData("31.0", 5, 0)]
    public void One_word_in_place_of_every_result_is_asked_about(
        string result,
        int specimens,
        int expected
    )
    {
        var study = SmallStudy.Of(
            [6],
            [.. Enumerable.Range(0, specimens).Select(_ => $"30.0 | {result}")]
        );

        Assert.Equal(
            expected,
            ResultQueries
                .Of(new StudyRows(study.Inputs))
                .Count(query => query.Code == "same-word-everywhere")
        );
    }

    [Fact]
    public void What_is_dated_after_the_check_is_asked_about()
    {
        var study = SmallStudy.Of([6], ["30.0 | 30.0", "31.0 | 31.5"]);
        var last = study.Inputs.Results.Max(row => row.TestedAt)!.Value;

        Assert.Empty(TimeQueries.After(study.Inputs, last));
        Assert.Empty(TimeQueries.After(study.Inputs, last.AddMinutes(-15)));
        var query = Assert.Single(TimeQueries.After(study.Inputs, last.AddMinutes(-16)));
        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Equal("tested_at", query.Source.Column);
        Assert.Equal(2, TimeQueries.After(study.Inputs, last.AddDays(-400)).Count());
    }

    [Fact]
    public void A_lot_without_its_index_is_asked_for_once()
    {
        var query = Assert.Single(Of(Study("3.00", isi: null), "isi-not-recorded"));

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains("for lot R1.", query.Message, StringComparison.Ordinal);
        Assert.Empty(Of(Study("9.00", isi: null), "ratio-disagrees"));
    }

    [Fact]
    public void A_person_in_two_groups_at_the_same_collection_is_on_the_first_page()
    {
        var study = SmallStudy
            .Quiet(40)
            .Tubes(tube =>
                tube.Specimen == "S010" ? tube with { Subject = "PS000", Group = "ufh" } : tube
            );

        var query = Assert.Single(Of(study, "subject-in-two-groups"));

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains("S000 in none, S010 in ufh", query.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(36, 0)]
    [InlineData(60, 1)]
    [InlineData(20, 1)]
    public void A_level_that_no_baseline_reaches_is_noted(int level, int expected) =>
        Assert.Equal(
            expected,
            SmallStudy
                .Quiet(40)
                .Analyte(analyte => analyte with { DecisionLevels = [level] })
                .Analyze()
                .Queries.Count(query =>
                    query is { Code: "level-not-reached", Severity: Severity.Note }
                )
        );

    [Fact]
    public void The_citrate_for_a_high_hematocrit_is_shown() =>
        Assert.Contains(
            "(100 − H)/(595 − H), here 0.075 mL",
            SmallStudy
                .Quiet(10)
                .Tube(0, 0, tube => tube with { HematocritPercent = 60 })
                .Cell()
                .Pairs[0]
                .Reason,
            StringComparison.Ordinal
        );
}

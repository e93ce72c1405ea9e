using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class RowQueryTests
{
    private static readonly SmallStudy s_study = SmallStudy.Quiet(40);

    private static DataQuery[] Of(SmallStudy study, string code) =>
        [.. study.Analyze().Queries.Where(query => query.Code == code)];

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_result_of_zero_or_below_stops(int value)
    {
        var study = s_study.Row(
            3,
            6,
            row => row with { SourceRow = 77, Result = new MeasuredResult("x", value) }
        );

        var query = Assert.Single(InputQueries.Of(study.Inputs));

        Assert.Equal("result-not-positive", query.Code);
        Assert.Equal(Severity.Stop, query.Severity);
        Assert.Equal(new QuerySource("results.csv", 77, "result"), query.Source);
        Assert.Throws<ArgumentException>(study.Analyze);
    }

    [Fact]
    public void A_censored_result_is_no_number_at_or_below_zero() =>
        Assert.Empty(Of(s_study.Result(3, 6, "<20"), "result-not-positive"));

    [Theory]
    [InlineData("305", "write >180.")]
    [InlineData("3.05", "write <20.")]
    public void A_plain_number_outside_the_measuring_interval_is_on_the_first_page(
        string result,
        string advice
    )
    {
        var query = Assert.Single(
            Of(s_study.Result(3, 6, result), "number-beyond-measuring-interval")
        );

        Assert.Equal(Severity.Attention, query.Severity);
        Assert.EndsWith(advice, query.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("180.0")]
    [InlineData("20.0")]
    [InlineData(">180")]
    public void Within_the_measuring_interval_or_written_as_beyond_it_is_well(string result) =>
        Assert.Empty(Of(s_study.Result(3, 6, result), "number-beyond-measuring-interval"));

    [Fact]
    public void An_exclusion_before_the_collection_stops()
    {
        var query = Assert.Single(InputQueries.Of(Excluded(-1).Inputs));

        Assert.Equal("exclusion-before-collection", query.Code);
        Assert.Equal(Severity.Stop, query.Severity);
        Assert.Equal(new QuerySource("study.toml", 10, "exclusion"), query.Source);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(30)]
    public void An_exclusion_when_the_result_could_be_known_is_on_the_first_page(int days) =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(Excluded(days), "exclusion-after-result")).Severity
        );

    [Fact]
    public void An_exclusion_before_the_day_of_the_delayed_test_is_well()
    {
        var study = Excluded(0).Row(3, 6, row => row with { TestedAt = row.TestedAt?.AddDays(1) });

        Assert.Empty(Of(study, "exclusion-after-result"));
    }

    [Fact]
    public void A_rerun_that_names_no_second_test_is_on_the_first_page() =>
        Assert.Equal(
            Severity.Attention,
            Assert.Single(Of(s_study.Rerun(3, 6), "rerun-without-effect")).Severity
        );

    private static SmallStudy Excluded(int daysAfterCollection)
    {
        var study = s_study.Exclude(3, 6);
        var exclusion = study.Inputs.Facts.Exclusions[0];
        return new(
            study.Inputs with
            {
                Facts = study.Inputs.Facts with
                {
                    Exclusions =
                    [
                        exclusion with
                        {
                            On = exclusion.On.AddDays(daysAfterCollection),
                        },
                    ],
                },
            }
        );
    }
}

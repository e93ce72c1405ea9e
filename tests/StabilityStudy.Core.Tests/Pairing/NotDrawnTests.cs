using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

/// <summary>A tube stated at collection not to have been drawn is no loss; one stated afterwards is.</summary>
public sealed class NotDrawnTests
{
    private static readonly SmallStudy s_study = SmallStudy.Quiet(10, 6, 8).WithoutRow(3, 8);

    [Fact]
    public void A_tube_stated_on_the_day_of_collection_is_no_loss()
    {
        var study = s_study.NotDrawn(3, 8);
        var pair = study.Cell(8).Pairs[3];

        Assert.Equal(PairStatus.NotDrawn, pair.Status);
        Assert.Equal("tube not drawn: vein collapsed (LS1, 2026-03-05)", pair.Reason);
        Assert.False(pair.CountsForAgreement || pair.IsLeftOut || pair.IsDue);
        Assert.Equal(1, study.Cell(8).Disposition.Count(PairStatus.NotDrawn));
        Assert.Single(Codes(study), "tube-not-drawn");
    }

    [Fact]
    public void Without_a_statement_the_missing_tube_counts()
    {
        Assert.True(s_study.Cell(8).Pairs[3].CountsForAgreement);
    }

    [Fact]
    public void A_statement_after_the_day_of_collection_does_not_count()
    {
        var study = s_study.NotDrawn(3, 8, daysLater: 1);

        Assert.Equal(PairStatus.NoDelayedResult, study.Cell(8).Pairs[3].Status);
        Assert.Single(Codes(study), "not-drawn-stated-afterwards");
    }

    [Theory]
    [InlineData("31.0", PairStatus.Compared)]
    [InlineData("CLOT", PairStatus.Failed)]
    [InlineData("NT", PairStatus.NoDelayedResult)]
    public void A_row_of_the_tube_contradicts_the_statement_and_is_used(
        string result,
        PairStatus status
    )
    {
        var study = s_study.Result(4, 8, result).NotDrawn(4, 8);

        Assert.Equal(status, study.Cell(8).Pairs[4].Status);
        Assert.Single(Codes(study), "not-drawn-has-result");
    }

    [Theory]
    [InlineData("NA")]
    [InlineData("NT")]
    public void A_row_without_time_and_result_agrees_with_the_statement(string result) =>
        Assert.Equal(
            PairStatus.NotDrawn,
            s_study
                .Row(4, 8, row => row with { TestedAt = null, Result = SmallRows.Reported(result) })
                .NotDrawn(4, 8)
                .Cell(8)
                .Pairs[4]
                .Status
        );

    [Fact]
    public void A_row_of_another_analyte_contradicts_the_statement_too()
    {
        var row = s_study.Inputs.Results.Single(row => row.Tube == SmallRows.TubeCode(4, 8));
        var study = s_study.WithoutRow(4, 8).NotDrawn(4, 8);
        var tested = new SmallStudy(
            study.Inputs with
            {
                Results = study.Inputs.Results.Add(row with { Analyte = "PT" }),
            }
        );

        Assert.Equal(PairStatus.NotDrawn, study.Cell(8).Pairs[4].Status);
        Assert.Equal(PairStatus.NoDelayedResult, tested.Cell(8).Pairs[4].Status);
    }

    [Fact]
    public void A_statement_for_another_storage_says_nothing()
    {
        Assert.Equal(
            PairStatus.NoDelayedResult,
            s_study.NotDrawn(3, 8, storage: "cold").Cell(8).Pairs[3].Status
        );
    }

    [Fact]
    public void Without_a_valid_baseline_the_baseline_says_why()
    {
        Assert.Equal(
            PairStatus.BaselineInvalid,
            s_study.WithoutRow(3, 0).NotDrawn(3, 8).Cell(8).Pairs[3].Status
        );
    }

    [Fact]
    public void A_tube_not_drawn_is_one_of_the_times_that_a_specimen_was_meant_for()
    {
        var study = SmallStudy
            .Of([6, 8, 12], Enumerable.Repeat("30.0 | 30.1 | - | -", 10))
            .Protocol(protocol => protocol with { DelaysPerSpecimen = 2 })
            .NotDrawn(0, 8);

        Assert.Equal(
            [PairStatus.Compared, PairStatus.NotDrawn, PairStatus.NotAssigned],
            study.Sequence().Cells.Select(cell => cell.Pairs[0].Status)
        );
    }

    private static IEnumerable<string> Codes(SmallStudy study) =>
        study.Analyze().Queries.Select(query => query.Code);
}

using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Doubts;

public sealed class LeftOutShareTests
{
    private static SmallStudy LeftOut(int received, int leftOut)
    {
        var study = SmallStudy.Quiet(received);
        for (var i = 0; i < leftOut; i++)
        {
            study = study.Result(received - 1 - i, 0, "QNS");
        }

        return study;
    }

    [Fact]
    public void Too_many_left_out_leave_a_time_point_inconclusive()
    {
        var cell = LeftOut(50, 11).Cell();

        Assert.All(cell.Criteria, result => Assert.Equal(Verdict.Met, result.Verdict));
        Assert.Equal(Conclusion.Inconclusive, cell.OwnConclusion);
        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal(new TooManyLeftOutReason(11, 50, 20), Assert.Single(cell.Doubts));
    }

    [Fact]
    public void A_share_exactly_at_the_maximum_is_allowed()
    {
        var cell = LeftOut(50, 10).Cell();

        Assert.Empty(cell.Doubts);
        Assert.Equal(Conclusion.Supported, cell.Conclusion);
    }

    [Fact]
    public void Not_supported_stays_not_supported()
    {
        var cell = LeftOut(50, 11)
            .Rows(row =>
                row.Occasion.IsBaseline ? row : row with { Result = SmallRows.Reported("60.0") }
            )
            .Cell();

        Assert.Equal(Conclusion.NotSupported, cell.OwnConclusion);
        Assert.NotEmpty(cell.Doubts);
    }

    [Fact]
    public void Failed_and_unexplained_specimens_are_counted_and_not_left_out() =>
        Assert.Null(
            LeftOutShare.Of(
                SmallStudy
                    .Of([6], ["30.0 | CLOT", "30.1 | -", "30.0 | >180", "30.0 | 30.1"])
                    .Cell()
                    .Pairs,
                0
            )
        );

    [Fact]
    public void Every_way_of_leaving_out_counts()
    {
        var study = SmallStudy
            .Of([6], ["30.0 | 30.1", "30.0 | 30.1", "QNS | 30.1", "30.0 | 30.1"])
            .Tube(0, 6, tube => tube with { FillPercent = 10 })
            .Row(1, 6, row => row with { TestedAt = row.TestedAt?.AddHours(3) })
            .Exclude(3, 6);

        Assert.Equal(new TooManyLeftOutReason(4, 4, 99), LeftOutShare.Of(study.Cell().Pairs, 99));
    }

    [Fact]
    public void No_specimens_are_no_doubt() => Assert.Null(LeftOutShare.Of([], 20));
}

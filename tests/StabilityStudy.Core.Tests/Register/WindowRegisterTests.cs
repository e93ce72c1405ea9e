using StabilityStudy.Core.Register;
using static StabilityStudy.Core.Register.WindowStanding;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Core.Tests.Register;

public sealed class WindowRegisterTests
{
    private static StandingWindow First(params RegisteredReport[] reports) =>
        new WindowRegister([.. reports]).On(Today)[0];

    [Fact]
    public void A_row_stands_as_its_report_and_its_days_say()
    {
        var declined = Approved with { Windows = [None("4 h", "6 h", null)] };

        Assert.Equal(InForce, First(Approved).Standing);
        Assert.Equal(NotYet, First(Approved with { Effective = Today.AddDays(1) }).Standing);
        Assert.Equal(InForce, First(Approved with { Effective = Today }).Standing);
        Assert.Equal(PastReview, First(Approved with { Review = Today.AddDays(-1) }).Standing);
        Assert.Equal(InForce, First(Approved with { Review = Today }).Standing);
        Assert.Equal(InForce, First(Approved with { Review = null }).Standing);
        Assert.Equal(Declined, First(declined).Standing);
        Assert.Equal(
            NotSupported,
            First(Approved with { Windows = [None("4 h", null, null)] }).Standing
        );
        Assert.Equal(
            NotTrusted,
            First(Approved with { Standing = ReportStanding.NotTrusted }).Standing
        );
        Assert.Equal(
            NotDecided,
            First(Approved with { Standing = ReportStanding.NotDecided }).Standing
        );
    }

    [Fact]
    public void Two_claims_of_one_cell_are_named_unless_one_replaces_the_other()
    {
        var second = Second(None("4 h", "8 h", "8 h"));
        var next = second with { Replaces = "e33e04c400000000" };

        Assert.Equal(["WB-RT-TWO-aaaaaaaa"], First(Approved, second).AlsoClaimedBy);
        Assert.Empty(First(Approved, next).AlsoClaimedBy);
        Assert.Equal(Superseded, First(Approved, next).Standing);
        Assert.Equal("WB-RT-TWO-aaaaaaaa", First(Approved, next).SupersededBy);
        Assert.Empty(First(Approved, Approved with { File = "copy.pdf" }).AlsoClaimedBy);
    }

    [Theory]
    [InlineData(ReportStanding.NotTrusted)]
    [InlineData(ReportStanding.NotDecided)]
    public void What_does_not_count_replaces_nothing(ReportStanding standing)
    {
        var next = Second(None("4 h", "8 h", "8 h")) with
        {
            Replaces = "e33e04c400000000",
            Standing = standing,
        };

        Assert.Equal(InForce, First(Approved, next).Standing);
    }
}

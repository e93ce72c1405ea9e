using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class MoreSpecimensTests
{
    private static readonly string[] s_wide = ["33.0", "29.0", "33.6", "28.8"];

    /// <summary>Specimens of 30.0 whose changes are +10, −3.3, +12 and −4 percent in turn, held to the mean alone.</summary>
    private static SmallStudy WideMean(int specimens) =>
        SmallStudy
            .Of([6], Enumerable.Range(0, specimens).Select(i => "30.0 | " + s_wide[i % 4]))
            .Criteria(SmallProtocol.MeanCriterion);

    /// <summary>Quiet specimens of which the first change by a third, held to the share alone.</summary>
    private static SmallStudy Shares(int specimens, int outside) =>
        SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, specimens)
                    .Select(i => i < outside ? "30.0 | 40.0" : "30.0 | 30.0")
            )
            .Criteria(SmallProtocol.EachCriterion);

    [Fact]
    public void A_supported_or_refuted_time_point_has_none()
    {
        Assert.Null(SmallStudy.Quiet(40).Cell().MoreSpecimens);
        Assert.Equal(Conclusion.NotSupported, Shares(40, 20).Cell().OwnConclusion);
        Assert.Null(Shares(40, 20).Cell().MoreSpecimens);
    }

    [Fact]
    public void An_interval_that_reaches_the_limit_gives_the_smallest_number_with_the_power()
    {
        var cell = WideMean(12).Cell();
        var bias = cell.Criteria.OfType<BiasResult>().Single();
        Assert.True(bias.Mean.TryGet(out var mean));
        double PowerOf(int n) =>
            EquivalencePower.Of(n, mean.Mean, mean.BySpecimen.StandardDeviation, -7.5, 7.5, 0.90);

        Assert.Equal(Conclusion.Inconclusive, cell.OwnConclusion);
        var more = Assert.IsType<MoreSpecimens>(cell.MoreSpecimens);
        var specimens = Assert.IsType<int>(more.Specimens);
        Assert.False(more.UnlikelyToHelp);
        Assert.True(PowerOf(specimens) >= 0.80 && PowerOf(specimens - 1) < 0.80);
        Assert.Equal("criterion mean decides", more.Because);
    }

    [Fact]
    public void A_mean_at_or_beyond_its_limit_is_unlikely_to_be_helped()
    {
        var changes = new[] { "36.0", "30.0", "36.3", "30.3" };
        var cell = SmallStudy
            .Of([6], Enumerable.Range(0, 12).Select(i => "30.0 | " + changes[i % 4]))
            .Criteria(SmallProtocol.MeanCriterion)
            .Cell();

        Assert.Equal(
            new MoreSpecimens(
                null,
                true,
                "the mean change of criterion mean is at or beyond its limit"
            ),
            cell.MoreSpecimens
        );
    }

    [Fact]
    public void Few_specimens_all_within_need_nineteen_for_eighty_five_percent() =>
        Assert.Equal(
            new MoreSpecimens(19, false, "criterion each decides"),
            Shares(12, 0).Cell().MoreSpecimens
        );

    [Fact]
    public void A_share_below_the_required_one_is_unlikely_to_be_helped() =>
        Assert.Equal(
            new MoreSpecimens(
                null,
                true,
                "the share within of criterion each is at or below the required one"
            ),
            Shares(40, 7).Cell().MoreSpecimens
        );

    [Fact]
    public void A_share_just_above_the_required_one_needs_more_than_two_hundred() =>
        Assert.Equal(
            new MoreSpecimens(null, false, "criterion each decides"),
            Shares(40, 5).Cell().MoreSpecimens
        );

    [Fact]
    public void Two_criteria_ask_for_more_than_the_harder_one_alone()
    {
        var alone = WideMean(12).Cell().MoreSpecimens;
        var both = WideMean(12)
            .Criteria(SmallProtocol.MeanCriterion, SmallProtocol.EachCriterion)
            .Cell()
            .MoreSpecimens;

        // 0.80 for both together: each with 0.90. One criterion alone needs only 0.80.
        Assert.True(alone!.Specimens >= 19);
        Assert.True(both!.Specimens > alone.Specimens);
    }

    [Fact]
    public void Few_collection_days_give_no_number_and_say_so()
    {
        var more = SmallStudy
            .Quiet(40)
            .Protocol(protocol => protocol with { MinimumDays = 11 })
            .Cell()
            .MoreSpecimens;

        Assert.Null(more!.Specimens);
        Assert.True(more.UnlikelyToHelp);
        Assert.StartsWith("only 10 collection days", more.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Pairs_left_out_give_no_number_and_say_so()
    {
        var doubt = new VerdictReason("left-out", "too many specimens were left out");

        Assert.Equal(
            new MoreSpecimens(null, true, doubt.Text),
            SpecimensStillNeeded.Of(
                Conclusion.Inconclusive,
                SmallStudy.Quiet(40).Cell().Criteria,
                [doubt]
            )
        );
    }
}

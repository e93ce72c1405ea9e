using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>Changes of side of which only one way counts, and only near the level.</summary>
public sealed class OneWaySidesTests
{
    private static ReclassificationCriterion Sides(
        SideDirection direction,
        NearRange? near = null,
        decimal percent = 10
    ) =>
        new("sides", [new("aPTT", null)], [], 0.95, percent, [40])
        {
            Direction = direction,
            Near = near,
            ZoneInUnit = 0.5m,
        };

    /// <summary>Sixty-one specimens that stay, 48 of them from 40.0 to 44.7 s, and some that change side by 4 s.</summary>
    private static SmallStudy Study(int falls, int rises) =>
        SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 61)
                .Select(i => i < 48 ? 40 + (i / 10m) : 30 + (i / 10m))
                .Select(
                    (level, i) =>
                        (
                            Level: level,
                            Change: i < falls ? -5.0m
                            : i >= 61 - rises ? 5.0m
                            : (i % 2 == 0 ? 0.1m : -0.1m) * (level >= 40.2m ? 1 : 0)
                        )
                )
                .Select(item =>
                    FormattableString.Invariant(
                        $"{item.Level:0.0} | {item.Level + item.Change:0.0}"
                    )
                )
        );

    private static LevelReclassification Level(SmallStudy study, ReclassificationCriterion sides) =>
        Assert.Single(
            Assert.IsType<ReclassificationResult>(study.Criteria(sides).Cell().Criteria[0]).Levels
        );

    /// <summary>Three falls and five rises, which from 35.6 s on reach 40 s by 5 s.</summary>
    [Theory]
    [InlineData(SideDirection.Both, 8)]
    [InlineData(SideDirection.Down, 3)]
    [InlineData(SideDirection.Up, 5)]
    public void Only_the_way_that_counts_is_counted(SideDirection direction, int changed)
    {
        var level = Level(Study(falls: 3, rises: 5), Sides(direction));

        Assert.Equal(61, level.Counted);
        Assert.Equal((5, 3), (level.MovedUp, level.MovedDown));
        Assert.Equal(changed, level.Changed);
        Assert.Equal(changed, level.OnOtherSide);
        Assert.Equal(changed, level.ChangedSpecimens.Length);
    }

    /// <summary>Exact one-sided 95 % bounds: of 48 one may change and of 61 two (Clopper and Pearson 1934).</summary>
    [Theory]
    [InlineData(1, Verdict.Met)]
    [InlineData(2, Verdict.Inconclusive)]
    public void Near_the_level_specimens_far_away_do_not_dilute_the_share(
        int falls,
        Verdict expected
    )
    {
        var near = Sides(SideDirection.Down, new NearRange(40, 45, 46));

        var level = Level(Study(falls, rises: 0), near);

        Assert.Equal(48, level.Counted);
        Assert.Equal(expected, level.Verdict);
        Assert.Equal(Verdict.Met, Level(Study(falls, rises: 0), Sides(SideDirection.Down)).Verdict);
    }

    [Fact]
    public void With_fewer_near_than_asked_for_nothing_is_met()
    {
        var level = Level(
            Study(falls: 0, rises: 0),
            Sides(SideDirection.Down, new NearRange(40, 45, 49))
        );

        Assert.Equal(Verdict.Inconclusive, level.Verdict);
        Assert.Equal(new TooFewNearReason(48, 49, 40, 45, "s"), level.Reason);
    }

    [Fact]
    public void What_fails_counts_whichever_way_counts()
    {
        var study = Study(falls: 0, rises: 0).Result(0, 6, "CLOT").Result(59, 6, "CLOT");

        Assert.Equal(2, Level(study, Sides(SideDirection.Down)).Failed);
        Assert.Equal(2, Level(study, Sides(SideDirection.Down)).Changed);
        Assert.Equal(1, Level(study, Sides(SideDirection.Down, new NearRange(40, 45, 46))).Changed);
    }

    /// <summary>Whether a result beyond the end of the measuring interval is near is not known where the range reaches beyond it.</summary>
    [Theory]
    [InlineData(">50.0", 48)]
    [InlineData(">44.0", 49)]
    [InlineData("<39.9", 48)]
    public void A_baseline_that_may_be_near_counts_and_one_that_cannot_does_not(
        string baseline,
        int counted
    )
    {
        var study = Study(falls: 0, rises: 0).Result(59, 0, baseline);

        var level = Level(study, Sides(SideDirection.Down, new NearRange(40, 45, 46)));

        Assert.Equal(counted, level.Counted);
    }

    /// <summary>By imprecision alone only what lies on the side from which it can cross is expected to.</summary>
    [Fact]
    public void What_imprecision_predicts_is_of_the_way_that_counts()
    {
        var study = Study(falls: 0, rises: 0);
        var (both, down, up) = (
            Level(study, Sides(SideDirection.Both)).ExpectedFromNoise!.Value,
            Level(study, Sides(SideDirection.Down)).ExpectedFromNoise!.Value,
            Level(study, Sides(SideDirection.Up)).ExpectedFromNoise!.Value
        );

        Assert.Equal(both, down + up, 12);
        Assert.True(down > up);
    }
}

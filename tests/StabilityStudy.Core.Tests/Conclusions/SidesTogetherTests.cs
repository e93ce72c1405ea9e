using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>Changes of side of two levels, each judged by itself and both together. Exact one-sided 95 % bounds: of 61 two may change at 10 % (Clopper and Pearson 1934).</summary>
public sealed class SidesTogetherTests
{
    private static ReclassificationCriterion Sides(bool together) =>
        new("sides", [new("aPTT", null)], [], 0.95, 10, [40, 60])
        {
            Direction = SideDirection.Down,
            LevelsTogether = together,
        };

    /// <summary>Sixty-one specimens, some below 40 s, the others a little above 40 or 60 s, of which some fall below the level by 5 s; and some that fall from above 60 to below 40 s.</summary>
    private static ReclassificationResult Judge(
        bool together,
        int past40,
        int past60,
        int pastBoth = 0
    )
    {
        var study = SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 61)
                .Select(i =>
                {
                    var (level, place) =
                        i < 5 ? (30m, i)
                        : i < 33 ? (43m, i - 5)
                        : (63m, i - 33);
                    var fall =
                        level == 43m && place < past40 ? 8m
                        : level == 63m && place < past60 ? 10m
                        : level == 63m && place >= 28 - pastBoth ? 40m
                        : i % 2 == 0 ? 0.1m
                        : -0.1m;
                    var x = level + (place / 10m);
                    return FormattableString.Invariant($"{x:0.0} | {x - fall:0.0}");
                })
        );
        return Assert.IsType<ReclassificationResult>(
            study.Criteria(Sides(together)).Cell().Criteria[0]
        );
    }

    [Theory]
    [InlineData(1, 1, 2, Verdict.Met)]
    [InlineData(2, 0, 2, Verdict.Met)]
    [InlineData(2, 1, 3, Verdict.Inconclusive)]
    [InlineData(2, 2, 4, Verdict.Inconclusive)]
    public void Both_levels_together_count_every_specimen_that_falls_past_either(
        int past40,
        int past60,
        int changed,
        Verdict expected
    )
    {
        var alone = Judge(together: false, past40, past60);
        var result = Judge(together: true, past40, past60);

        Assert.Equal(Verdict.Met, alone.Verdict);
        Assert.Null(alone.Together);
        Assert.Equal(alone.Levels.Select(level => level.Changed), [past40, past60]);
        Assert.Equal(alone.Levels.Select(l => l.Verdict), result.Levels.Select(l => l.Verdict));
        Assert.Equal(61, result.Together!.Counted);
        Assert.Equal(changed, result.Together.Changed);
        Assert.Equal(changed, result.Together.ChangedSpecimens.Length);
        Assert.Equal(expected, result.Together.Verdict);
        Assert.Equal(expected, result.Verdict);
        Assert.Equal(
            new { Found = expected, Direction = SideDirection.Down },
            result
                .Reasons.OfType<ChangesTogetherReason>()
                .Select(reason => new { reason.Found, reason.Direction })
                .Single()
        );
    }

    [Fact]
    public void A_specimen_that_falls_past_both_counts_once()
    {
        var result = Judge(together: true, past40: 0, past60: 0, pastBoth: 2);

        Assert.Equal([2, 2], result.Levels.Select(level => level.Changed));
        Assert.Equal(2, result.Together!.Changed);
        Assert.Equal(Verdict.Met, result.Verdict);
    }

    /// <summary>Lower bound above 10 %: of 61 at least eleven.</summary>
    [Fact]
    public void Many_falls_past_either_refute_it_where_neither_level_does()
    {
        var result = Judge(together: true, past40: 8, past60: 8);

        Assert.DoesNotContain(Verdict.NotMet, result.Levels.Select(level => level.Verdict));
        Assert.Equal(16, result.Together!.Changed);
        Assert.Equal(Verdict.NotMet, result.Verdict);
    }
}

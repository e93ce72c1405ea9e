using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

/// <summary>How long plasma may stand before it is frozen and after it is thawed.</summary>
public sealed class FreezingRuleTests
{
    /// <summary>Frozen 2 h after collection and thawed 30 min before the test at 6 h.</summary>
    private static SmallStudy Frozen(FreezingRules? rules) =>
        SmallStudy
            .Of([6], ["30.0 | 30.5", "31.0 | 31.2"])
            .Protocol(protocol =>
                protocol with
                {
                    TubePlan = TubePlan.Aliquots,
                    Freezing = rules,
                    Groups =
                    [
                        .. protocol.Groups.Select(patients =>
                            patients with
                            {
                                BaselineSpunWithin = TimeSpan.FromHours(1),
                            }
                        ),
                    ],
                }
            )
            .Storage(storage =>
                storage with
                {
                    State = StorageState.SeparatedPlasma,
                    LowestCelsius = -25,
                    HighestCelsius = -18,
                }
            )
            .Tubes(tube =>
                tube with
                {
                    SpunAt = tube.CollectedAt.AddMinutes(15),
                    SeparatedAt = tube.CollectedAt.AddMinutes(30),
                    FrozenAt = tube.CollectedAt.AddHours(2),
                    ThawedAt = tube.CollectedAt.AddMinutes(330),
                }
            );

    private static FreezingRules Rules(int within, int? testWithin) =>
        new(TimeSpan.FromMinutes(within), new(36, 38), TimeSpan.FromMinutes(5), "common practice")
        {
            TestWithin = testWithin is { } minutes ? TimeSpan.FromMinutes(minutes) : null,
        };

    private static PairRecord First(FreezingRules? rules) => Frozen(rules).Cell().Pairs[0];

    [Fact]
    public void Without_a_rule_the_times_are_shown_and_not_judged() =>
        Assert.Equal(PairStatus.Compared, First(null).Status);

    [Theory]
    [InlineData(120, 30)]
    [InlineData(120, null)]
    public void At_the_last_minute_a_portion_counts(int within, int? testWithin) =>
        Assert.Equal(PairStatus.Compared, First(Rules(within, testWithin)).Status);

    [Theory]
    [InlineData(119, 30, "frozen 2 h 00 min after collection, 119 min allowed")]
    [InlineData(120, 29, "tested 30 min after thawing, 29 min allowed")]
    public void A_portion_that_stood_longer_is_left_out_with_its_reason(
        int within,
        int testWithin,
        string reason
    )
    {
        var pair = First(Rules(within, testWithin));

        Assert.Equal((PairStatus.OutsideTiming, reason), (pair.Status, pair.Reason));
        Assert.Contains(
            Frozen(Rules(within, testWithin)).Analyze().Queries,
            query =>
                query.Code == "outside-timing"
                && query.Message.Contains(reason, StringComparison.Ordinal)
        );
    }
}

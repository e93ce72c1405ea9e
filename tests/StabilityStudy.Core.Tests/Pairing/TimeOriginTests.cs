using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

/// <summary>Times that count from the thawing of each portion, and tolerances that grow with the delay.</summary>
public sealed class TimeOriginTests
{
    /// <summary>Portions frozen for three days; each is thawed as long before its test as the plan says.</summary>
    private static SmallStudy Thawed(TimeOrigin origin = TimeOrigin.Thawing) =>
        SmallStudy
            .Of([6], ["30.0 | 30.5", "31.0 | 31.2"])
            .Protocol(protocol =>
                protocol with
                {
                    TimeOrigin = origin,
                    TubePlan = TubePlan.Aliquots,
                    Groups =
                    [
                        .. protocol.Groups.Select(patients =>
                            patients with
                            {
                                BaselineSpunWithin = TimeSpan.FromHours(4),
                            }
                        ),
                    ],
                }
            )
            .Storage(storage => storage with { State = StorageState.SeparatedPlasma })
            .Tubes(tube =>
                tube with
                {
                    SpunAt = tube.CollectedAt.AddMinutes(30),
                    SeparatedAt = tube.CollectedAt.AddMinutes(50),
                    FrozenAt = tube.CollectedAt.AddHours(2),
                    ThawedAt = tube.CollectedAt.AddDays(3),
                }
            )
            .Rows(row => row with { TestedAt = row.TestedAt!.Value.AddDays(3) });

    private static PairRecord First(SmallStudy study) => study.Cell().Pairs[0];

    [Fact]
    public void Delays_count_from_thawing()
    {
        var pair = First(Thawed());

        Assert.Equal(PairStatus.Compared, pair.Status);
        Assert.Equal(TimeSpan.FromMinutes(40), pair.Baseline!.Delay);
        Assert.Equal(TimeSpan.FromHours(6), pair.Delayed!.Delay);
    }

    [Fact]
    public void The_same_rows_are_days_too_late_where_time_counts_from_collection() =>
        Assert.Equal(PairStatus.OutsideTiming, First(Thawed(TimeOrigin.Collection)).Status);

    [Theory]
    [InlineData(0, PairStatus.BaselineInvalid)]
    [InlineData(6, PairStatus.OutsideTiming)]
    public void Without_its_time_of_thawing_a_portion_does_not_count(int hour, PairStatus expected)
    {
        var pair = First(Thawed().Tube(0, hour, tube => tube with { ThawedAt = null }));

        Assert.Equal(expected, pair.Status);
        Assert.Equal("time of thawing not recorded", pair.Reason);
    }

    [Fact]
    public void A_portion_that_was_never_frozen_was_not_thawed() =>
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(Thawed().Tube(0, 6, tube => tube with { FrozenAt = null })).Status
        );

    [Theory]
    [InlineData(-31, PairStatus.OutsideTiming)]
    [InlineData(0, PairStatus.Compared)]
    [InlineData(31, PairStatus.OutsideTiming)]
    public void The_tolerance_is_that_about_the_delay_since_thawing(
        int minutes,
        PairStatus expected
    ) =>
        Assert.Equal(
            expected,
            First(
                Thawed()
                    .Row(
                        0,
                        6,
                        row => row with { TestedAt = row.TestedAt!.Value.AddMinutes(minutes) }
                    )
            ).Status
        );

    /// <summary>Storage after thawing begins with the baseline, not after it.</summary>
    [Fact]
    public void Storage_after_thawing_does_not_begin_later_than_its_baseline()
    {
        var protocol = Thawed().Inputs.Protocol;

        Assert.False(protocol.BeginsAfterBaseline(protocol.Storages[0]));
        Assert.False(protocol.IsSinceCollection(protocol.Storages[0]));
    }

    [Theory]
    [InlineData(6, 31, PairStatus.OutsideTiming)]
    [InlineData(24, 60, PairStatus.Compared)]
    [InlineData(24, 61, PairStatus.OutsideTiming)]
    [InlineData(48, 61, PairStatus.Compared)]
    [InlineData(48, 121, PairStatus.OutsideTiming)]
    public void Later_delays_may_be_tested_later(int hour, int minutes, PairStatus expected)
    {
        var study = SmallStudy
            .Of([6, 24, 48], ["30.0 | 30.5 | 30.4 | 30.3", "31.0 | 31.2 | 31.1 | 31.4"])
            .Protocol(protocol =>
                protocol with
                {
                    Tolerance = protocol.Tolerance with
                    {
                        Later =
                        [
                            new(TimeSpan.FromHours(24), TimeSpan.FromHours(1)),
                            new(TimeSpan.FromHours(48), TimeSpan.FromHours(2)),
                        ],
                    },
                }
            )
            .Row(0, hour, row => row with { TestedAt = row.TestedAt!.Value.AddMinutes(minutes) })
            .Tube(0, hour, tube => tube with { SpunAt = tube.SpunAt!.Value.AddMinutes(minutes) });

        var pairs = study
            .Analyze()
            .Sequences.Single()
            .Cells.Single(cell => cell.Key.TimePoint == SmallProtocol.At(hour))
            .Pairs;

        Assert.Equal(expected, pairs[0].Status);
    }
}

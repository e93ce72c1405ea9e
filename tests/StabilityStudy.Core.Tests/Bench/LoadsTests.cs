using CsCheck;
using StabilityStudy.Core.Bench;

namespace StabilityStudy.Core.Tests.Bench;

public sealed class LoadsTests
{
    private static readonly DateTimeOffset s_morning = new(2026, 3, 2, 7, 0, 0, TimeSpan.Zero);

    /// <summary>Collection times of the example study on its first day, time point 6 h, with 30 min to be late: loads formed by hand.</summary>
    [Fact]
    public void Eight_tubes_of_a_morning_make_three_loads()
    {
        int[] collected = [5, 14, 19, 28, 41, 47, 58, 64];

        var loads = Loads.Of([.. collected.Select(minute => Window(minute + 360, minute + 390))]);

        Assert.Equal(
            [(0, 3, "13:19", "13:35"), (3, 3, "13:47", "13:58"), (6, 2, "14:04", "14:28")],
            loads.Select(load =>
                (load.First, load.Count, $"{load.From:HH:mm}", $"{load.Until:HH:mm}")
            )
        );
    }

    [Fact]
    public void Every_tube_is_in_one_load_whose_span_lies_in_its_own_and_lasts_or_is_its_own() =>
        Gen.Select(Gen.Int[0, 600].Array[1, 40], Gen.Int[1, 60])
            .Sample(
                (minutes, late) =>
                {
                    var times = minutes
                        .Order()
                        .Select(minute => Window(minute, minute + late))
                        .ToImmutableArray();
                    var loads = Loads.Of(times);
                    Assert.Equal(
                        Enumerable.Range(0, times.Length),
                        loads.SelectMany(load => Enumerable.Range(load.First, load.Count))
                    );
                    Assert.All(
                        loads,
                        load =>
                        {
                            Assert.All(
                                times.Slice(load.First, load.Count),
                                time =>
                                    Assert.True(load.From >= time.From && load.Until <= time.Until)
                            );
                            Assert.True(
                                load.Until - load.From >= TimeSpan.FromMinutes(10)
                                    || load.Count == 1
                            );
                        }
                    );
                }
            );

    private static (DateTimeOffset From, DateTimeOffset Until) Window(int from, int until) =>
        (s_morning.AddMinutes(from), s_morning.AddMinutes(until));
}

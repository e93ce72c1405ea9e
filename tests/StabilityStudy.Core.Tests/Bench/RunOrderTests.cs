using CsCheck;
using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Tests.Bench;

public sealed class RunOrderTests
{
    private static readonly TestOccasion s_sixHours = new(new TimePoint(TimeSpan.FromHours(6)));

    private static readonly ImmutableArray<string> s_specimens =
    [
        .. Enumerable.Range(1, 40).Select(number => $"N-{number:000}"),
    ];

    [Fact]
    public void It_is_a_permutation_for_every_seed() =>
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[1, 40])
            .Sample(
                (seed, count) =>
                    Of(s_specimens[..count], seed).Order().SequenceEqual(Enumerable.Range(1, count))
            );

    [Fact]
    public void The_same_seed_gives_the_same_order_and_another_one_another() =>
        Assert.Multiple(
            () => Assert.Equal(Of(s_specimens, 7), Of(s_specimens, 7)),
            () => Assert.NotEqual(Of(s_specimens, 7), Of(s_specimens, 8)),
            () =>
                Assert.NotEqual(
                    Of(s_specimens, 7),
                    RunOrder.Of(
                        s_specimens,
                        "wb-rt",
                        new TestOccasion(new TimePoint(TimeSpan.FromHours(8))),
                        7
                    )
                )
        );

    [Fact]
    public void Two_specimens_keep_their_order_whoever_else_comes()
    {
        var all = Of(s_specimens, 7);
        var some = Of([.. s_specimens.Where((_, i) => i % 3 == 0)], 7);

        Assert.Equal(
            s_specimens.Index().Where(item => item.Index % 3 == 0).OrderBy(item => all[item.Index]),
            s_specimens
                .Index()
                .Where(item => item.Index % 3 == 0)
                .Zip(some)
                .OrderBy(item => item.Second)
                .Select(item => item.First)
        );
    }

    [Fact]
    public void Each_specimen_is_as_often_first_as_another_over_many_seeds()
    {
        // 4000 seeds, 8 specimens: 500 each are expected, standard deviation 21 (binomial).
        var first = Enumerable
            .Range(0, 4000)
            .Select(seed => Of(s_specimens[..8], seed).IndexOf(1))
            .CountBy(place => place)
            .ToArray();

        Assert.Equal(8, first.Length);
        Assert.All(first, item => Assert.InRange(item.Value, 500 - 84, 500 + 84));
    }

    private static ImmutableArray<int> Of(ImmutableArray<string> specimens, int seed) =>
        RunOrder.Of(specimens, "wb-rt", s_sixHours, seed);
}

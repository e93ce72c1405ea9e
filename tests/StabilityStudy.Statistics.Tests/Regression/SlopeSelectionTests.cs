using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>Selection by rank against all slopes sorted, on small data with ties of every kind and on data that must be narrowed down.</summary>
public sealed class SlopeSelectionTests
{
    /// <summary>Whole numbers so small that points coincide, stand above each other and lie on lines of slope −1, 0 and 1.</summary>
    [Fact]
    public void Every_rank_and_count_of_thousands_of_small_cases_is_that_of_all_slopes()
    {
        var random = new SeededRandom(7);
        for (var run = 0; run < 4000; run++)
        {
            var n = 2 + (int)(random.NextDouble() * 11);
            var (wide, high) = (1 + (run % 7), 1 + (run % 5));
            long[] x = [.. Enumerable.Range(0, n).Select(_ => (long)(random.NextDouble() * wide))];
            long[] y =
            [
                .. Enumerable.Range(0, n).Select(_ => (long)(random.NextDouble() * high) - 2),
            ];
            RequireSame(x, y);
        }
    }

    /// <summary>More slopes than are listed at once, so that intervals are drawn from, bracketed and counted.</summary>
    [Theory]
    [InlineData(700, 1_000_000, 1.0)]
    [InlineData(700, 40, 1.0)]
    [InlineData(700, 3, 1.0)]
    [InlineData(700, 1_000_000, 0.0)]
    [InlineData(900, 25, -1.0)]
    [InlineData(600, 900_000_000_000_000_000, 1.0)]
    public void Ranks_of_many_slopes_are_those_of_all_slopes(int n, long range, double slope)
    {
        var random = new SeededRandom((ulong)n);
        long[] x = [.. Enumerable.Range(0, n).Select(_ => (long)(random.NextDouble() * range))];
        long[] y =
        [
            .. x.Select(value =>
                (long)((slope * value * 0.9) + (0.05 * range * random.NextDouble()))
            ),
        ];
        var all = All(x, y);
        var selection = new SlopeSelection(Paired(x, y));

        Assert.True(all.Length > 20_000);
        Assert.Equal(all.Length, selection.Finite);
        long[] ranks =
        [
            1,
            2,
            all.Length / 3,
            (all.Length / 3) + 1,
            (all.Length + 1) / 2,
            all.Length - 1,
            all.Length,
        ];
        RequireAt(ranks);

        // A second method asks about ranks near by, whose search begins with what the first has found.
        RequireAt((all.Length / 2) - 90, (all.Length / 2) + 3, (all.Length / 2) + 400);
        RequireAt((all.Length / 3) + 1000, all.Length / 2, 5);

        void RequireAt(params long[] wanted) =>
            Assert.All(
                wanted.Zip(selection.AtRanks(wanted)),
                pair => Assert.Equal(0, ExactSlope.Compare(all[pair.First - 1], pair.Second))
            );
    }

    /// <summary>Whole numbers as billionths, so that pairs hold them as they are or without common zeros at the end.</summary>
    private static ExactPairs Paired(long[] x, long[] y) =>
        ExactPairs.Create(
            [.. x.Select(value => value / 1_000_000_000m)],
            [.. y.Select(value => value / 1_000_000_000m)]
        );

    private static void RequireSame(long[] x, long[] y)
    {
        var all = All(x, y);
        var selection = new SlopeSelection(Paired(x, y));
        Assert.Equal(all.Length, selection.Finite);
        Assert.Equal(Twos(x, y).Count(two => two.X == 0 && two.Y != 0), selection.Vertical);
        if (all.Length == 0)
        {
            return;
        }

        long[] ranks = [.. Enumerable.Range(1, all.Length).Select(rank => (long)rank)];
        Assert.All(
            all.Zip(selection.AtRanks(ranks)),
            pair => Assert.Equal(0, ExactSlope.Compare(pair.First, pair.Second))
        );
        Assert.All(
            all.Append(ExactSlope.Finite(1, -1)).Append(ExactSlope.Finite(3, 1)),
            slope =>
            {
                Assert.Equal(
                    all.Count(other => ExactSlope.Compare(other, slope) < 0),
                    selection.CountBelow(slope)
                );
                Assert.Equal(
                    all.Count(other => ExactSlope.Compare(other, slope) <= 0),
                    selection.CountUpTo(slope)
                );
            }
        );
    }

    private static IEnumerable<(long X, long Y)> Twos(long[] x, long[] y) =>
        from i in Enumerable.Range(0, x.Length)
        from j in Enumerable.Range(i + 1, x.Length - i - 1)
        select (x[j] - x[i], y[j] - y[i]);

    private static ExactSlope[] All(long[] x, long[] y)
    {
        var slopes = Twos(x, y)
            .Where(two => two.X != 0)
            .Select(two => ExactSlope.Finite(two.X, two.Y))
            .ToArray();
        Array.Sort(slopes, ExactSlope.Compare);
        return slopes;
    }
}

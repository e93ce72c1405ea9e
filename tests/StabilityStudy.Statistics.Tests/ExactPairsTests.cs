using CsCheck;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests;

public sealed class ExactPairsTests
{
    [Fact]
    public void Decimal_differences_are_exact()
    {
        var pairs = ExactPairs.Create([0.1m, 0.2m], [0.3m, 0.4m]);

        Assert.Equal([0.2, 0.2], pairs.Difference);
    }

    [Fact]
    public void Trailing_zeros_do_not_matter()
    {
        var pairs = ExactPairs.Create([2.50m], [3.000m]);

        Assert.Equal((1, 25, 30), (pairs.Decimals, pairs.ScaledX[0], pairs.ScaledY[0]));
    }

    [Fact]
    public void Members_are_the_nearest_doubles() =>
        Gen.Select(Gen.Int[-1_000_000, 1_000_000], Gen.Int[0, 6])
            .Sample(
                (whole, decimals) =>
                {
                    var value = new decimal(Math.Abs(whole), 0, 0, whole < 0, (byte)decimals);
                    var pairs = ExactPairs.Create([value], [0m]);
                    Assert.Equal((double)value, pairs.X[0]);
                    Assert.Equal(-(double)value, pairs.Difference[0] + 0.0);
                }
            );

    [Fact]
    public void Swapped_pairs_turn_the_difference() =>
        Gen.Select(Gen.Int[-9999, 9999], Gen.Int[-9999, 9999])
            .Sample(
                (x, y) =>
                    Assert.Equal(
                        ExactPairs.Create([x / 100m], [y / 100m]).Difference[0],
                        0 - ExactPairs.Create([y / 100m], [x / 100m]).Difference[0]
                    )
            );

    [Fact]
    public void Equal_differences_are_equal_on_every_level_and_scale() =>
        Gen.Select(
                Gen.Int[1, 5000].Array[2, 20],
                Gen.Int[-50, 50],
                Gen.Int[0, 2].Select(i => new[] { 0.1m, 1m, 10m }[i])
            )
            .Sample(
                (tenths, change, factor) =>
                {
                    var pairs = ExactPairs.Create(
                        [.. tenths.Select(t => t / 10m * factor)],
                        [.. tenths.Select(t => (t + change) / 10m * factor)]
                    );
                    Assert.Single(pairs.Difference.Distinct());
                    Assert.Equal(
                        EstimateNote.SameValues,
                        Assert.Single(
                            ArithmeticMean.WithInterval(pairs.Difference.AsSpan(), 0.9).Notes
                        )
                    );
                }
            );

    [Fact]
    public void No_pairs_are_allowed() => Assert.Equal(0, ExactPairs.Create([], []).Count);

    [Fact]
    public void Lengths_differ_throws() =>
        Assert.Throws<ArgumentException>("y", () => ExactPairs.Create([1m], []));

    [Fact]
    public void Too_many_decimals_or_too_large_a_value_throws()
    {
        Assert.Throws<ArgumentException>("x", () => ExactPairs.Create([0.0000000001m], [1m]));
        Assert.Throws<ArgumentException>("y", () => ExactPairs.Create([1m], [900_000_001m]));
    }

    [Theory]
    [InlineData(new[] { 0.1, 0.2, 0.3 }, new[] { 0.6, 0.7, 0.8 }, true)]
    [InlineData(new[] { 0.1, 0.2, 0.3 }, new[] { 0.6, 0.7, 0.9 }, false)]
    [InlineData(new[] { 1.0, 1.0, 1.0 }, new[] { 2.0, 3.0, 5.0 }, true)]
    [InlineData(new[] { 1.0, 1.0, 2.0 }, new[] { 2.0, 2.0, 5.0 }, true)]
    [InlineData(new[] { 1.0, 2.0, 1.0 }, new[] { 2.0, 2.0, 5.0 }, false)]
    [InlineData(new double[0], new double[0], true)]
    public void Whether_pairs_lie_on_one_line_is_decided_exactly(
        double[] x,
        double[] y,
        bool expected
    ) =>
        Assert.Equal(
            expected,
            ExactPairs
                .Create(
                    Array.ConvertAll(x, value => (decimal)value),
                    Array.ConvertAll(y, value => (decimal)value)
                )
                .AreOnOneLine()
        );
}

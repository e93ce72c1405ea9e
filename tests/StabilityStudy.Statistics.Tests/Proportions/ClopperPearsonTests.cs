using CsCheck;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Statistics.Tests.Proportions;

public sealed class ClopperPearsonTests
{
    [Fact]
    public void Bounds_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/clopper_pearson.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var bounds = ClopperPearson.Bounds(
                table.Whole(row, "successes"),
                table.Whole(row, "trials"),
                table.Number(row, "level")
            );
            Close.Absolute(table.Number(row, "one_lower"), bounds.OneSidedLower, 1e-12);
            Close.Absolute(table.Number(row, "one_upper"), bounds.OneSidedUpper, 1e-12);
            Assert.Equal(
                bounds.OneSidedUpper,
                ClopperPearson.OneSidedUpper(
                    bounds.Successes,
                    bounds.Trials,
                    bounds.ConfidenceLevel
                )
            );
            Close.Absolute(table.Number(row, "two_lower"), bounds.TwoSidedLower, 1e-12);
            Close.Absolute(table.Number(row, "two_upper"), bounds.TwoSidedUpper, 1e-12);
        }
    }

    // R's binom.test as kept in the SciPy test suite, digits as printed there.
    [Theory]
    [InlineData(20, 100, 0.95, 0.1266555521019559, 0.2918426890886281, 1e-13)]
    [InlineData(3, 50, 0.99, 0.006872485, 0.202706269, 5e-10)]
    [InlineData(0, 10, 0.95, 0, 0.3084971, 5e-8)]
    [InlineData(10, 10, 0.95, 0.6915029, 1, 5e-8)]
    public void Published_two_sided_bounds_are_met(
        int successes,
        int trials,
        double level,
        double lower,
        double upper,
        double tolerance
    )
    {
        var bounds = ClopperPearson.Bounds(successes, trials, level);

        Close.Absolute(lower, bounds.TwoSidedLower, tolerance);
        Close.Absolute(upper, bounds.TwoSidedUpper, tolerance);
        Assert.Equal((double)successes / trials, bounds.Share);
    }

    [Fact]
    public void Published_one_sided_bounds_are_met()
    {
        Close.Absolute(0.2588656, ClopperPearson.Bounds(0, 10, 0.95).OneSidedUpper, 5e-8);
        Close.Absolute(0.7411344, ClopperPearson.Bounds(10, 10, 0.95).OneSidedLower, 5e-8);
    }

    [Fact]
    public void Ends_are_exactly_nothing_and_everything()
    {
        var none = ClopperPearson.Bounds(0, 7, 0.95);
        var all = ClopperPearson.Bounds(7, 7, 0.95);

        Assert.Equal((0.0, 0.0), (none.OneSidedLower, none.TwoSidedLower));
        Assert.Equal((1.0, 1.0), (all.OneSidedUpper, all.TwoSidedUpper));
        Assert.Equal(1, ClopperPearson.OneSidedUpper(all.Successes, all.Trials, 0.95));
    }

    [Fact]
    public void Bound_without_failures_has_its_closed_form()
    {
        foreach (var n in new[] { 1, 19, 59, 400, 10_000 })
        {
            Close.Relative(
                Math.Pow(1 - 0.95, 1.0 / n),
                ClopperPearson.Bounds(n, n, 0.95).OneSidedLower,
                1e-13
            );
        }
    }

    [Fact]
    public void Successes_and_failures_mirror_each_other() =>
        Gen.Select(Gen.Int[1, 300], Gen.Int[0, 300], Gen.Double[0.5, 0.99])
            .Where((trials, successes, _) => successes <= trials)
            .Sample(
                (trials, successes, level) =>
                {
                    var bounds = ClopperPearson.Bounds(successes, trials, level);
                    var mirrored = ClopperPearson.Bounds(trials - successes, trials, level);
                    Close.Absolute(1 - bounds.OneSidedUpper, mirrored.OneSidedLower, 1e-12);
                    Close.Absolute(1 - bounds.TwoSidedLower, mirrored.TwoSidedUpper, 1e-12);
                    Assert.True(bounds.TwoSidedLower <= bounds.OneSidedLower);
                    Assert.True(bounds.OneSidedLower <= bounds.Share);
                    Assert.True(bounds.Share <= bounds.OneSidedUpper);
                    Assert.True(bounds.OneSidedUpper <= bounds.TwoSidedUpper);
                }
            );

    [Fact]
    public void Lower_bound_never_covers_less_often_than_stated()
    {
        // Every outcome of 40 trials, weighted by its probability: no simulation needed.
        var lower = Enumerable
            .Range(0, 41)
            .Select(k => ClopperPearson.Bounds(k, 40, 0.95).OneSidedLower)
            .ToArray();
        foreach (var share in new[] { 0.05, 0.5, 0.85, 0.9, 0.95, 0.99 })
        {
            var covered = Enumerable
                .Range(0, 41)
                .Where(k => lower[k] <= share)
                .Sum(k => Binomial.Cdf(k, 40, share) - Binomial.Cdf(k - 1, 40, share));
            Assert.InRange(covered, 0.95 - 1e-12, 1 + 1e-12);
        }
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>("trials", () => ClopperPearson.Bounds(0, 0, 0.95));
        Assert.Throws<ArgumentException>("successes", () => ClopperPearson.Bounds(-1, 5, 0.95));
        Assert.Throws<ArgumentException>("successes", () => ClopperPearson.Bounds(6, 5, 0.95));
        Assert.Throws<ArgumentException>("confidenceLevel", () => ClopperPearson.Bounds(1, 5, 1));
    }
}

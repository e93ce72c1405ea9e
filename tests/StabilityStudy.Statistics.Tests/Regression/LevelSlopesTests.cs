using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>Both slopes of a change against the level: against least squares on two groups, and the rate at which they find what is not there.</summary>
public sealed class LevelSlopesTests
{
    private static readonly double[] s_x = [20, 31, 47, 66, 90, 118];
    private static readonly double[] s_y = [20.3, 30.2, 46.9, 63.1, 84.8, 107];

    /// <summary>One cluster for all pairs and a cluster for each pair are both a line with one constant.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Without_clusters_the_slopes_are_those_of_ordinary_least_squares(bool own)
    {
        var slopes = Fit(s_x, s_y, own ? [0, 1, 2, 3, 4, 5] : [7, 7, 7, 7, 7, 7]);

        double[] change = [.. s_x.Zip(s_y, (x, y) => 100 * Math.Log(y / x))];
        double[] level = [.. s_x.Zip(s_y, (x, y) => 50 * Math.Log(x * y))];
        double[] baseline = [.. s_x.Select(x => 100 * Math.Log(x))];
        var onLevel = Computed.Value(OrdinaryLeastSquares.Fit(level, change, 0.95));
        var onBaseline = Computed.Value(OrdinaryLeastSquares.Fit(baseline, change, 0.95));
        Close.Absolute(onLevel.Slope.Value, slopes.OnLevel, 1e-12);
        Close.Absolute(onLevel.Slope.StandardError, slopes.OnLevelStandardError, 1e-12);
        Close.Absolute(onBaseline.Slope.Value, slopes.OnBaseline, 1e-12);
        Assert.Equal(4, slopes.DegreesOfFreedom);
        Close.Absolute(
            2 * StudentT.Cdf(-Math.Abs(onBaseline.Slope.Value / onBaseline.Slope.StandardError), 4),
            slopes.OnBaselinePValue,
            1e-12
        );
        Close.Absolute(level.Average(), slopes.MeanLevel, 1e-9);
    }

    [Fact]
    public void What_a_cluster_adds_to_all_its_changes_does_not_alter_the_slope_on_the_baseline()
    {
        ImmutableArray<int> clusters = [0, 0, 0, 1, 1, 1];
        double[] moved = [.. s_y.Select((y, i) => i < 3 ? y : 1.1 * y)];

        var plain = Fit(s_x, s_y, clusters);
        var shifted = Fit(s_x, moved, clusters);

        Close.Absolute(plain.OnBaseline, shifted.OnBaseline, 1e-10);
        Close.Absolute(plain.OnLevel, shifted.OnLevel, 1e-10);
        Assert.Equal(3, plain.DegreesOfFreedom);
    }

    [Fact]
    public void Slopes_of_opposite_sign_do_not_agree()
    {
        var slopes = new LevelSlopes(0.1, 0.01, 0.001, -0.1, 0.001, 30, 350, 30, 0.3);

        Assert.False(slopes.Agree(0.05));
        Assert.True((slopes with { OnBaseline = 0.1 }).Agree(0.05));
        Assert.False((slopes with { OnBaseline = 0.1, OnBaselinePValue = 0.05 }).Agree(0.05));
    }

    [Fact]
    public void What_cannot_be_fitted_is_refused()
    {
        Assert.NotNull(LevelSlopes.Fit([1, 2, -3], [1, 2, 3], [0, 0, 0]).NotComputable);
        Assert.NotNull(LevelSlopes.Fit([1, 2, 3, 4], [1, 2, 3, 4], [0, 0, 1, 2]).NotComputable);
        Assert.NotNull(LevelSlopes.Fit([5, 5, 5], [5, 5, 5], [0, 0, 0]).NotComputable);
        Assert.NotNull(LevelSlopes.Fit([], [], []).NotComputable);
        Assert.Throws<ArgumentException>(() => LevelSlopes.Fit([1, 2], [1, 2], [0]));
    }

    /// <summary>Errors of the baseline no larger than those of the delayed result, which bears the change of the specimen besides: either slope alone errs by far more than the stated 0.05, both together do not.</summary>
    [Theory]
    [InlineData(0.04, 0.04)]
    [InlineData(0.01, 0.06)]
    public void Both_slopes_agree_by_chance_at_most_five_times_in_a_hundred(
        double errorOfBaseline,
        double errorOfDelayed
    )
    {
        const int Studies = 1000;
        const int Specimens = 40;
        var random = new SeededRandom(43);
        ImmutableArray<int> runs = [.. Enumerable.Range(0, Specimens).Select(i => i % 10)];
        var (agreed, either) = (0, 0);
        for (var study = 0; study < Studies; study++)
        {
            double[] truth =
            [
                .. Enumerable
                    .Range(0, Specimens)
                    .Select(_ => 30 * Math.Exp(0.2 * random.NextNormal())),
            ];
            var slopes = Fit(
                [.. truth.Select(v => v * Math.Exp(errorOfBaseline * random.NextNormal()))],
                [.. truth.Select(v => v * Math.Exp(errorOfDelayed * random.NextNormal()))],
                runs
            );
            agreed += slopes.Agree(0.05) ? 1 : 0;
            either += slopes.OnLevelPValue < 0.05 || slopes.OnBaselinePValue < 0.05 ? 1 : 0;
        }

        Assert.InRange(agreed, 0, 50 + (int)(3 * Math.Sqrt(Studies * 0.05 * 0.95)));
        Assert.True(either > 100, $"Either slope alone was found {either} times.");
    }

    private static LevelSlopes Fit(double[] x, double[] y, ImmutableArray<int> clusters) =>
        Computed.Value(LevelSlopes.Fit(x, y, clusters));
}

using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>The jackknife of many pairs beside the one that fits each set of others by itself.</summary>
public sealed class LeftOutSumsTests
{
    private const int Count = 700;

    [Theory]
    [InlineData(1.0, 1.0, 0.02)]
    [InlineData(0.3, 1.4, 0.1)]
    [InlineData(2.0, 0.7, 0.2)]
    public void Weighted_line_without_each_pair_and_each_day_is_that_of_the_others(
        double ratio,
        double slope,
        double error
    )
    {
        var (x, y) = Pairs(slope, error);
        LineEstimator fit = (xs, ys) => WeightedDemingRegression.FitLine(xs, ys, ratio);
        var expected = JackknifedLine.Fit(x, y, fit, leaveOut: null).Value!;
        var found = WeightedDemingRegression.Fit(x, y, ratio, 0.95).Value!;
        Same(expected.Interval(line => line.Slope, 0.95), found.Slope);
        Same(expected.Interval(line => line.Intercept, 0.95), found.Intercept);

        var days = new Clustering(
            IntervalSource.CollectionDays,
            [.. Enumerable.Range(0, Count).Select(i => i % 30)]
        );
        var biases = WeightedDemingRegression.BiasAt(x, y, ratio, 50, 0.9, [days]).Value!;
        var byDay = OfOthers(x, y, days, fit, expected);
        var wider = new[] { expected, byDay }
            .Select(item => item.Interval(line => line.Intercept + ((line.Slope - 1) * 50), 0.9))
            .MaxBy(interval => interval.Upper)!;
        Close.Relative(wider.StandardError, biases.StandardError, 1e-9);
        Close.Relative(wider.Upper, biases.Upper, 1e-9);
    }

    [Fact]
    public void Line_of_constant_error_without_each_pair_is_that_of_the_others()
    {
        var (x, y) = Pairs(1.1, 0.05);
        var expected = JackknifedLine
            .Fit(x, y, (xs, ys) => DemingRegression.FitLine(xs, ys, 0.5), leaveOut: null)
            .Value!;
        var found = DemingRegression.Fit(x, y, 0.5, 0.95).Value!;
        Same(expected.Interval(line => line.Slope, 0.95), found.Slope);
        Same(expected.Interval(line => line.Intercept, 0.95), found.Intercept);
    }

    /// <summary>Without the one pair that differs there is no line, however many pairs there are.</summary>
    [Fact]
    public void Baselines_that_are_the_same_without_one_pair_are_refused()
    {
        double[] x = [.. Enumerable.Repeat(40.0, Count - 1), 60.0];
        double[] y = [.. Enumerable.Range(0, Count).Select(i => 40.0 + (i % 7))];
        Assert.Equal(
            Refusal.SameBaselines,
            DemingRegression.Fit(x, y, 1, 0.95).NotComputable!.Kind
        );
        Assert.Equal(
            Refusal.SameBaselines,
            WeightedDemingRegression.Fit(x, y, 1, 0.95).NotComputable!.Kind
        );
    }

    private static JackknifedLine OfOthers(
        double[] x,
        double[] y,
        Clustering days,
        LineEstimator fit,
        JackknifedLine byPair
    ) =>
        byPair with
        {
            LeaveOneOut =
            [
                .. days
                    .Cluster.Distinct()
                    .Select(day =>
                        fit(
                            [.. x.Where((_, i) => days.Cluster[i] != day)],
                            [.. y.Where((_, i) => days.Cluster[i] != day)]
                        ).Value!
                    ),
            ],
            DegreesOfFreedom = days.Cluster.Distinct().Count() - 1,
        };

    private static void Same(CoefficientInterval expected, CoefficientInterval found)
    {
        Assert.Equal(expected.Value, found.Value);
        Close.Relative(expected.StandardError, found.StandardError, 1e-9);
        Close.Relative(expected.Lower, found.Lower, 1e-9);
        Close.Relative(expected.Upper, found.Upper, 1e-9);
    }

    private static (double[] X, double[] Y) Pairs(double slope, double error)
    {
        var random = new SeededRandom(7);
        var level = Enumerable
            .Range(0, Count)
            .Select(_ => 25 + (90 * random.NextDouble()))
            .ToArray();
        return (
            [.. level.Select(value => value * (1 + (error * random.NextNormal())))],
            [.. level.Select(value => (2 + (slope * value)) * (1 + (error * random.NextNormal())))]
        );
    }
}

using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Drift;

/// <summary>The drift by a mixed model against nlme of R (scripts/random_slope.R) and against what it must be in closed form.</summary>
[Trait("lane", "slow")]
public sealed class RandomSlopeTests
{
    private const double Level = 0.95;

    private static readonly ReferenceTable s_results = ReferenceTable.Read(
        "computed/random_slope_results.csv"
    );

    private static readonly ReferenceTable s_expected = ReferenceTable.Read(
        "computed/random_slope_expected.csv"
    );

    private static ImmutableArray<SpecimenResponses> Specimens(string name) =>
        [
            .. Enumerable
                .Range(0, s_results.Count)
                .Where(row => s_results.Says(row, "case", name))
                .GroupBy(row => s_results.Whole(row, "id"))
                .Select(rows => new SpecimenResponses(
                    [.. rows.Select(row => s_results.Number(row, "g"))],
                    [.. rows.Select(row => s_results.Number(row, "y"))]
                )),
        ];

    private static double Expected(string name, string quantity) =>
        s_expected.Number(
            Enumerable
                .Range(0, s_expected.Count)
                .Single(row =>
                    s_expected.Says(row, "case", name) && s_expected.Says(row, "quantity", quantity)
                ),
            "value"
        );

    /// <summary>nlme searches without second derivatives, so its variances have six or seven true digits; the likelihood is flat there and has more.</summary>
    [Theory]
    [InlineData("growth")]
    [InlineData("jittered")]
    [InlineData("long")]
    public void Line_variances_and_likelihood_are_those_of_nlme(string name)
    {
        var fit = Computed.Value(RandomSlope.Fit(Specimens(name), Level));

        Close.Relative(Expected(name, "intercept"), fit.Intercept, 1e-7);
        Close.Relative(Expected(name, "slope"), fit.Slope, 1e-6);
        Close.Relative(Expected(name, "slope_se"), fit.SlopeStandardError, 1e-5);
        Close.Relative(Expected(name, "var_intercept"), fit.InterceptVariance, 1e-4);
        Close.Relative(Expected(name, "var_slope"), fit.SlopeVariance, 1e-4);
        Close.Relative(
            Expected(name, "covariance"),
            fit.Correlation!.Value * Math.Sqrt(fit.InterceptVariance * fit.SlopeVariance),
            1e-4
        );
        Close.Relative(Expected(name, "var_residual"), fit.ResidualVariance, 1e-5);
        Close.Absolute(Expected(name, "loglik"), fit.RestrictedLogLikelihood, 1e-6);
        Close.Absolute(Expected(name, "aicc"), fit.CorrectedInformation!.Value, 1e-5);
        Assert.True(fit.RestrictedLogLikelihood >= Expected(name, "loglik") - 1e-9);
        Assert.Equal(VarianceBoundary.None, fit.Boundary);
    }

    /// <summary>
    /// Simulated stability of three batches with different slopes (Obenchain 1990, as printed in the manual of a general statistics package): 102.70 (0.6456), −0.5259 (0.1194), variances 0.9768,
    /// −0.1045, 0.0372 and 3.2932, −2 log-likelihood 350.3 in print from memory; further digits by lme4 of R, whose search stops early in the variances.
    /// </summary>
    [Fact]
    public void Stability_of_three_batches_has_the_published_line_and_variances()
    {
        var table = ReferenceTable.Read("published/obenchain1990_stability.csv");
        var fit = Computed.Value(
            RandomSlope.Fit(
                [
                    .. Enumerable
                        .Range(0, table.Count)
                        .GroupBy(row => table.Whole(row, "batch"))
                        .Select(rows => new SpecimenResponses(
                            [.. rows.Select(row => table.Number(row, "month"))],
                            [.. rows.Select(row => table.Number(row, "y"))]
                        )),
                ],
                Level
            )
        );

        Assert.Equal(84, fit.ResultCount);
        Close.Absolute(102.7038, fit.Intercept, 1e-4);
        Close.Absolute(-0.525945, fit.Slope, 2e-6);
        Close.Absolute(0.119368, fit.SlopeStandardError, 1e-5);
        Close.Absolute(0.976461, fit.InterceptVariance, 5e-4);
        Close.Absolute(0.037162, fit.SlopeVariance, 1e-5);
        Close.Absolute(
            -0.104444,
            fit.Correlation!.Value * Math.Sqrt(fit.InterceptVariance * fit.SlopeVariance),
            5e-5
        );
        Close.Absolute(3.293257, fit.ResidualVariance, 1e-4);
        Close.Absolute(350.3281, -2 * fit.RestrictedLogLikelihood, 1e-4);
    }

    /// <summary>At the boundary nlme stops beside it, with a likelihood that is never above ours.</summary>
    [Fact]
    public void A_boundary_is_recognized_and_said()
    {
        var fit = Computed.Value(RandomSlope.Fit(Specimens("complete"), Level));

        Assert.NotEqual(VarianceBoundary.None, fit.Boundary);
        Assert.True(fit.RestrictedLogLikelihood >= Expected("complete", "loglik"));
        Close.Absolute(Expected("complete", "loglik"), fit.RestrictedLogLikelihood, 1e-3);
        Close.Relative(Expected("complete", "slope"), fit.Slope, 1e-6);
    }

    /// <summary>With the same delays for all, and inside the boundary, the mean slope is the mean of the specimens' own slopes with their SD/√m.</summary>
    [Fact]
    public void In_a_complete_design_it_is_the_mean_of_the_specimens_own_slopes()
    {
        var specimens = Specimens("growth");
        var slopes = specimens
            .Select(item =>
                Computed
                    .Value(
                        OrdinaryLeastSquares.Fit(item.Growth.AsSpan(), item.Response.AsSpan(), 0.9)
                    )
                    .Slope.Value
            )
            .ToArray();
        var mean = slopes.Average();
        var error = Math.Sqrt(
            slopes.Sum(slope => (slope - mean) * (slope - mean))
                / (slopes.Length - 1)
                / slopes.Length
        );

        var fit = Computed.Value(RandomSlope.Fit(specimens, Level));

        Close.Relative(mean, fit.Slope, 1e-12);
        Close.Relative(error, fit.SlopeStandardError, 1e-9);
        Close.Relative(
            mean - (StudentT.Quantile(Level, slopes.Length - 1) * error),
            fit.SlopeLower,
            1e-9
        );
        Assert.Equal(slopes.Length - 1, fit.DegreesOfFreedom);
    }

    [Theory]
    [InlineData("growth")]
    [InlineData("jittered")]
    public void Units_and_origin_of_results_and_order_of_specimens_change_only_what_they_must(
        string name
    )
    {
        var specimens = Specimens(name);
        var plain = Computed.Value(RandomSlope.Fit(specimens, Level));
        var other = Computed.Value(
            RandomSlope.Fit(
                [
                    .. specimens
                        .Reverse()
                        .Select(item => new SpecimenResponses(
                            [.. item.Growth.Select(g => 10 * g)],
                            [.. item.Response.Select(y => (1000 * y) - 7)]
                        )),
                ],
                Level
            )
        );

        Close.Relative(100 * plain.Slope, other.Slope, 1e-9);
        Close.Relative(100 * plain.SlopeUpper, other.SlopeUpper, 1e-8);
        Close.Relative(plain.Correlation!.Value, other.Correlation!.Value, 1e-6);
        Close.Relative(1e6 * plain.ResidualVariance, other.ResidualVariance, 1e-7);
    }

    /// <summary>A thousand small data sets, with and without levels and slopes of their own, end inside and at the boundary.</summary>
    [Fact]
    public void The_search_settles_on_small_data_of_all_kinds()
    {
        var random = new SeededRandom(17);
        double Draw() => Normal.Quantile(random.NextDouble());
        var boundaries = new HashSet<VarianceBoundary>();
        for (var run = 0; run < 1000; run++)
        {
            var (levels, tilt, noise) = (
                run % 5 == 0 ? 0 : 10 * random.NextDouble(),
                run % 3 == 0 ? 0 : 2 * random.NextDouble(),
                0.1 + random.NextDouble()
            );
            ImmutableArray<SpecimenResponses> specimens =
            [
                .. Enumerable
                    .Range(0, 3 + (run % 10))
                    .Select(_ =>
                    {
                        var (level, slope) = (levels * Draw(), tilt * Draw());
                        ImmutableArray<double> g =
                        [
                            .. Enumerable
                                .Range(0, 2 + (int)(3 * random.NextDouble()))
                                .Select(i => i + random.NextDouble()),
                        ];
                        return new SpecimenResponses(
                            g,
                            [.. g.Select(t => level + (slope * t) + (noise * Draw()))]
                        );
                    })
                    .Prepend(new([0, 1, 3], [0.3 * Draw(), Draw(), Draw()])),
            ];

            var fit = Computed.Value(RandomSlope.Fit(specimens, Level));
            boundaries.Add(fit.Boundary);
            Assert.True(double.IsFinite(fit.RestrictedLogLikelihood));
            Assert.InRange(fit.Slope, fit.SlopeLower, fit.SlopeUpper);
            RequireAgreement(fit);
        }

        // At the boundary the two variances nearly always leave one direction free, so one of them alone is hardly ever zero.
        Assert.Subset(
            boundaries,
            new HashSet<VarianceBoundary>
            {
                VarianceBoundary.None,
                VarianceBoundary.FullCorrelation,
                VarianceBoundary.NoSlopeVariance,
            }
        );
    }

    /// <summary>What the boundary says is what the variances show: a variance that is said to be zero is exactly zero.</summary>
    private static void RequireAgreement(RandomSlopeFit fit)
    {
        Assert.Equal(fit.Boundary == VarianceBoundary.NoSlopeVariance, fit.SlopeVariance == 0);
        Assert.Equal(fit.InterceptVariance == 0 || fit.SlopeVariance == 0, fit.Correlation is null);
        if (fit.Correlation is { } correlation)
        {
            Assert.Equal(
                fit.Boundary == VarianceBoundary.FullCorrelation,
                Math.Abs(correlation) == 1
            );
            Assert.InRange(correlation, -1, 1);
        }
    }

    [Fact]
    public void What_cannot_be_told_apart_is_refused()
    {
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            RandomSlope.Fit([new([0, 1, 2], [1, 2, 3]), new([0, 1, 2], [1, 3, 3])], Level)
        );
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            RandomSlope.Fit(
                [
                    .. Enumerable
                        .Range(0, 9)
                        .Select(i => new SpecimenResponses([0, 1], [i, i * 1.1])),
                ],
                Level
            )
        );
        // Two specimens with a slope and many of one result.
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            RandomSlope.Fit(
                [
                    new([0, 1, 2], [1, 2, 3.5]),
                    new([0, 1, 2], [1, 3, 3]),
                    .. Enumerable.Range(0, 9).Select(i => new SpecimenResponses([1], [i])),
                ],
                Level
            )
        );
        Computed.Refusal(
            AssumptionCode.ZeroSpread,
            RandomSlope.Fit(
                [
                    .. Enumerable
                        .Range(0, 5)
                        .Select(i => new SpecimenResponses([0, 1, 2], [i, i + 1, i + 2])),
                ],
                Level
            )
        );
    }

    [Fact]
    public void Wrong_arguments_are_the_callers_mistake()
    {
        Assert.Throws<ArgumentException>(() => RandomSlope.Fit([new([0, 1], [1])], Level));
        Assert.Throws<ArgumentException>(() => RandomSlope.Fit([new([0], [double.NaN])], Level));
        Assert.Throws<ArgumentException>(
            "specimens",
            () => OneOfMany([0, double.NaN, 2], [1, 2, 3])
        );
        Assert.Throws<ArgumentException>(
            "specimens",
            () => OneOfMany([0, 1, 2], [1, double.NaN, 3])
        );
        Assert.Throws<ArgumentException>("specimens", () => OneOfMany([0, 1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => RandomSlope.Fit([], 0.5));
        Assert.Throws<ArgumentException>(() => RandomSlope.Fit(default, Level));

        static void OneOfMany(ImmutableArray<double> growth, ImmutableArray<double> response) =>
            RandomSlope.Fit([.. Specimens("growth"), new(growth, response)], Level);
    }

    /// <summary>With three specimens the deviance has two minima; a reviewer's many starts, evaluated with full covariance matrices, found the lower one at a correlation of −1.</summary>
    [Fact]
    public void Of_two_minima_the_lower_one_is_found()
    {
        var fit = Computed.Value(
            RandomSlope.Fit(
                [
                    new([1.093, 6.239, 24.324], [321.9, 323.2, 329.0]),
                    new([1.194, 8.173, 12.056, 24.137], [408.9, 410.5, 411.7, 415.2]),
                    new([6.059, 8.262], [310.3, 310.1]),
                ],
                Level
            )
        );

        Assert.Equal(0.298, fit.Slope, 0.002);
        Assert.Equal(0.017, fit.SlopeStandardError, 0.001);
        Assert.Equal(VarianceBoundary.FullCorrelation, fit.Boundary);
    }

    [Fact]
    public void Seven_results_give_a_fit_and_no_corrected_criterion()
    {
        var fit = Computed.Value(
            RandomSlope.Fit(
                [
                    new([0.0, 6.0, 12.0], [300.0, 302.0, 303.5]),
                    new([0.0, 6.0], [310.0, 311.0]),
                    new([0.0, 6.0], [320.0, 323.0]),
                ],
                Level
            )
        );

        Assert.Equal(7, fit.ResultCount);
        Assert.Null(fit.CorrectedInformation);
    }

    /// <summary>
    /// Results level + slope·g + c·(1, −2, 1) at g = −1, 0, 1: the last term is orthogonal to both others, so every specimen's own line is (level, slope) with the residual squares 6c². Where the levels
    /// (or the slopes) are all the same, their variance is zero at the estimate, σ² = Σ6c²/(m + m − 1), and the other variance is that of the specimens' own values less σ²/Σz².
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_variance_alone_at_zero_has_the_closed_form(bool levelsAreTheSame)
    {
        double[] own = [3, -3, 1, -1, 4, -4, 2, -2];
        double[] curvature = [0.2, 0.3, 0.1, 0.4, 0.2, 0.1, 0.3, 0.2];
        ImmutableArray<SpecimenResponses> specimens =
        [
            .. own.Zip(
                curvature,
                (value, c) =>
                    levelsAreTheSame
                        ? new SpecimenResponses([-1, 0, 1], [c - value, -2 * c, c + value])
                        : new SpecimenResponses([-1, 0, 1], [value + c, value - (2 * c), value + c])
            ),
        ];

        var fit = Computed.Value(RandomSlope.Fit(specimens, Level));

        var residual = curvature.Sum(c => 6 * c * c) / 15;
        var between = own.Sum(value => value * value) / 7;
        Close.Relative(residual, fit.ResidualVariance, 1e-9);
        Close.Absolute(0, fit.Slope, 1e-12);
        Assert.Null(fit.Correlation);
        if (levelsAreTheSame)
        {
            Assert.Equal(VarianceBoundary.NoInterceptVariance, fit.Boundary);
            Assert.Equal(0, fit.InterceptVariance);
            Close.Relative(between - (residual / 2), fit.SlopeVariance, 1e-8);
            Close.Relative(Math.Sqrt(between / 8), fit.SlopeStandardError, 1e-8);
        }
        else
        {
            Assert.Equal(VarianceBoundary.NoSlopeVariance, fit.Boundary);
            Assert.Equal(0, fit.SlopeVariance);
            Close.Relative(between - (residual / 3), fit.InterceptVariance, 1e-8);
            Close.Relative(Math.Sqrt(residual / 2 / 8), fit.SlopeStandardError, 1e-8);
        }
    }

    /// <summary>From 41 specimens on there is one start only, that of the specimens' own lines; a specimen with one delay has none.</summary>
    /// <summary>In a complete design inside the boundary what a specimen contributes is its own least-squares slope.</summary>
    [Fact]
    public void Bounds_over_days_are_those_of_the_mean_of_the_specimens_own_slopes()
    {
        var specimens = Specimens("complete");
        ImmutableArray<Clustering> days =
        [
            new(
                IntervalSource.CollectionDays,
                [.. Enumerable.Range(0, specimens.Length).Select(i => i % 4)]
            ),
        ];

        var model = Computed.Value(RandomSlope.Fit(specimens, Level));
        var fit = Computed.Value(RandomSlope.Fit(specimens, Level, days));
        var mean = Computed.Value(
            ClusteredMean.WithInterval(
                [
                    .. specimens.Select(item =>
                    {
                        var (g, y) = (item.Growth.Average(), item.Response.Average());
                        return item.Growth.Zip(item.Response, (a, b) => (a - g) * (b - y)).Sum()
                            / item.Growth.Sum(a => (a - g) * (a - g));
                    }),
                ],
                days,
                (2 * Level) - 1
            )
        );

        Assert.Equal(Math.Min(model.SlopeLower, mean.Lower), fit.SlopeLower, 9);
        Assert.Equal(Math.Max(model.SlopeUpper, mean.Upper), fit.SlopeUpper, 9);
    }

    [Fact]
    public void Many_specimens_some_with_one_delay_only_have_a_fit()
    {
        var random = new SeededRandom(20261126);
        var whole = Enumerable
            .Range(0, 44)
            .Select(i => Draw(i % 4 == 0 ? [6.0, 6.0] : [0.0, 6.0, 12.0]))
            .ToImmutableArray();

        var fit = Computed.Value(RandomSlope.Fit(whole, Level));

        Assert.Equal(44, fit.SpecimenCount);
        Assert.Equal(32, fit.DegreesOfFreedom);
        Assert.InRange(fit.Slope, fit.SlopeLower, fit.SlopeUpper);
        Assert.InRange(
            0.5,
            fit.Slope - (4 * fit.SlopeStandardError),
            fit.Slope + (4 * fit.SlopeStandardError)
        );

        SpecimenResponses Draw(ImmutableArray<double> delays)
        {
            var (level, slope) = (
                30 + (3 * random.NextNormal()),
                0.5 + (0.1 * random.NextNormal())
            );
            return new(delays, [.. delays.Select(g => level + (slope * g) + random.NextNormal())]);
        }
    }
}

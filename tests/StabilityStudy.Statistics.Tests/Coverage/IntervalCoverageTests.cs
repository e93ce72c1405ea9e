using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Coverage;

/// <summary>
/// How often intervals miss what is true, in seeded samples of a known population. Margins are four binomial standard errors; where a method is an approximation, what it is known to add is said.
/// </summary>
[Trait("lane", "slow")]
public sealed class IntervalCoverageTests
{
    private const int Samples = 2000;

    /// <summary>Four standard errors of a share of 0.05 in 2,000 samples.</summary>
    private const double Margin = 0.02;

    [Fact]
    public void Tolerance_interval_holds_the_stated_share_as_often_as_stated() =>
        RequireMisses(
            0.05,
            random =>
            {
                var found = Computed.Value(
                    ToleranceInterval.Compute(Normals(random, 25), 0.9, 0.95)
                );
                return Normal.Cdf(found.Upper) - Normal.Cdf(found.Lower) < 0.9;
            }
        );

    [Fact]
    public void Median_and_Hodges_Lehmann_miss_no_more_than_their_achieved_level()
    {
        RequireMisses(
            1 - Computed.Value(Median.WithInterval(Normals(new(1), 30), 0.95)).AchievedConfidence,
            random => Misses(0, Computed.Value(Median.WithInterval(Normals(random, 30), 0.95)))
        );
        RequireMisses(
            1
                - Computed
                    .Value(HodgesLehmann.WithInterval(Normals(new(1), 30), 0.95))
                    .AchievedConfidence,
            random =>
                Misses(0, Computed.Value(HodgesLehmann.WithInterval(Normals(random, 30), 0.95)))
        );

        static bool Misses(double truth, OrderInterval interval) =>
            interval.Lower > truth || interval.Upper < truth;
    }

    [Fact]
    public void Weighted_least_squares_with_the_right_weights() =>
        RequireMisses(
            0.05,
            random =>
            {
                var x = Levels(random, 30);
                double[] y =
                [
                    .. x.Select(value => 2 + (1.1 * value) + (0.05 * value * random.NextNormal())),
                ];
                var slope = Computed
                    .Value(
                        WeightedLeastSquares.Fit(
                            x,
                            y,
                            [.. x.Select(value => 1 / (value * value))],
                            0.95
                        )
                    )
                    .Slope;
                return slope.Lower > 1.1 || slope.Upper < 1.1;
            }
        );

    /// <summary>Errors in y only.</summary>
    [Fact]
    public void Theil_Sen_slope() =>
        RequireMisses(
            0.05,
            random =>
            {
                var x = Levels(random, 30);
                var fit = Computed.Value(
                    TheilSen.Fit(Pairs(x, x.Select(value => value + random.NextNormal())), 0.95)
                );
                return fit.SlopeLower > 1 || fit.SlopeUpper < 1;
            }
        );

    /// <summary>Errors of x and y alike, true slope 1.</summary>
    [Fact]
    public void Passing_Bablok_slope() =>
        RequireMisses(
            0.05,
            random =>
            {
                var truth = Levels(random, 30);
                var fit = Computed.Value(
                    PassingBablok.Fit(
                        Pairs(
                            truth.Select(value => value + random.NextNormal()),
                            truth.Select(value => value + random.NextNormal())
                        ),
                        0.95
                    )
                );
                return fit.SlopeLower > 1 || fit.SlopeUpper < 1;
            }
        );

    /// <summary>With normal pairs of correlation ρ the true τ is (2/π)·arcsin ρ. At 60 pairs the large-sample interval misses up to two in a hundred more.</summary>
    [Fact]
    public void Kendall_tau() =>
        RequireMisses(
            0.06,
            random =>
            {
                const double correlation = 0.6;
                var x = Normals(random, 60);
                var found = Computed.Value(
                    KendallRankCorrelation.Compute(
                        Pairs(
                            x,
                            x.Select(value =>
                                (correlation * value)
                                + (Math.Sqrt(1 - (correlation * correlation)) * random.NextNormal())
                            )
                        ),
                        0.95
                    )
                );
                var truth = 2 / Math.PI * Math.Asin(correlation);
                return found.Lower > truth || found.Upper < truth;
            }
        );

    /// <summary>Either one-sided bound of the mixed model, with a third of the results missing.</summary>
    [Fact]
    public void Mixed_model_bound_of_the_mean_slope() =>
        RequireMisses(
            0.05,
            random =>
            {
                var specimens = ImmutableArray.CreateBuilder<SpecimenResponses>();
                for (var specimen = 0; specimen < 20; specimen++)
                {
                    var (level, slope) = (10 * random.NextNormal(), 2 + random.NextNormal());
                    double[] growth =
                    [
                        0,
                        .. new[] { 1.0, 2, 3, 4 }.Where(_ => random.NextDouble() > 1 / 3.0),
                    ];
                    specimens.Add(
                        new(
                            [.. growth],
                            [.. growth.Select(g => level + (slope * g) + random.NextNormal())]
                        )
                    );
                }

                return Computed.Value(RandomSlope.Fit(specimens.ToImmutable(), 0.95)).SlopeUpper
                    < 2;
            }
        );

    /// <summary>The same where the results of a day and delay share what their run adds: the model alone misses far more than stated, with the days as clusters not.</summary>
    [Fact]
    public void Mixed_model_bound_of_the_mean_slope_in_shared_runs()
    {
        double Missed(bool clustered) =>
            Misses(random =>
            {
                double[] hours = [0, 1, 2, 3];
                var runs = Enumerable
                    .Range(0, 5)
                    .Select(_ => hours.Select(_ => 2 * random.NextNormal()).ToArray())
                    .ToArray();
                ImmutableArray<int> day = [.. Enumerable.Range(0, 20).Select(i => i % 5)];
                ImmutableArray<SpecimenResponses> specimens =
                [
                    .. day.Select(at =>
                    {
                        var (level, slope) = (10 * random.NextNormal(), 2 + random.NextNormal());
                        return new SpecimenResponses(
                            [.. hours],
                            [
                                .. hours.Select(
                                    (g, i) =>
                                        level + (slope * g) + runs[at][i] + random.NextNormal()
                                ),
                            ]
                        );
                    }),
                ];
                return Computed
                        .Value(
                            RandomSlope.Fit(
                                specimens,
                                0.95,
                                clustered ? [new(IntervalSource.CollectionDays, day)] : []
                            )
                        )
                        .SlopeUpper < 2;
            });

        Assert.InRange(Missed(clustered: true), 0.01, 0.05 + Margin);
        Assert.InRange(Missed(clustered: false), 0.05 + Margin, 1);
    }

    /// <summary>Changes that differ by day too: the hull of specimens and days never misses more than stated.</summary>
    [Fact]
    public void Clustered_mean_in_the_presence_of_days()
    {
        var misses = Misses(random =>
        {
            double[] days = [.. Enumerable.Range(0, 6).Select(_ => random.NextNormal())];
            int[] day = [.. Enumerable.Range(0, 30).Select(i => i % 6)];
            var found = Computed.Value(
                ClusteredMean.WithInterval(
                    [.. day.Select(at => days[at] + random.NextNormal())],
                    [new(IntervalSource.CollectionDays, [.. day])],
                    0.95
                )
            );
            return found.Lower > 0 || found.Upper < 0;
        });

        Assert.InRange(misses, 0.02, 0.05 + Margin);
    }

    private static void RequireMisses(double nominal, Func<SeededRandom, bool> misses) =>
        Assert.InRange(Misses(misses), nominal - Margin, nominal + Margin);

    private static double Misses(Func<SeededRandom, bool> misses)
    {
        var random = new SeededRandom(20261126);
        return Enumerable.Range(0, Samples).Count(_ => misses(random)) / (double)Samples;
    }

    private static double[] Normals(SeededRandom random, int count) =>
        [.. Enumerable.Range(0, count).Select(_ => random.NextNormal())];

    private static double[] Levels(SeededRandom random, int count) =>
        [.. Enumerable.Range(0, count).Select(_ => 20 + (30 * random.NextDouble()))];

    private static ExactPairs Pairs(IEnumerable<double> x, IEnumerable<double> y) =>
        ExactPairs.Create(
            [.. x.Select(value => Math.Round((decimal)value, 6))],
            [.. y.Select(value => Math.Round((decimal)value, 6))]
        );
}

using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>
/// The reason for the rule. Forty changes in percent whose true mean is the limit itself, so that every interval below the limit is a false claim; nominal: 0.05. What specimens differ by has
/// an SD of 3 %, and each of the two results adds a repeatability of 1.41 %. Expected rates: simulated independently beforehand, with 4,000 to 20,000 studies each.
/// </summary>
[Trait("lane", "slow")]
public sealed class ClusteredMeanSimulationTests
{
    private const int Repetitions = 6000;
    private const int Specimens = 40;
    private const double Limit = 7.5;

    /// <summary>Three binomial standard errors of a share of 0.05.</summary>
    private static readonly double s_margin = 3 * Math.Sqrt(0.05 * 0.95 / Repetitions);

    private static readonly ImmutableArray<int> s_tenDays = Numbers(i => i % 10);

    /// <summary>Baselines of a day in one run and delayed results in another, five days: by specimens 0.14, by the rule 0.047 (specimens without repeatability, run SD 1 %).</summary>
    [Fact]
    public void Five_days_in_runs_of_their_own()
    {
        var days = Numbers(i => i % 5);
        var (bySpecimen, byRule) = FalseClaims(
            [new(IntervalSource.CollectionDays, days)],
            random => Sum(Normal(random, 3), Shared(random, days, 1), Shared(random, days, 1))
        );

        Assert.InRange(bySpecimen, 0.12, 0.16);
        Assert.InRange(byRule, 0.047 - s_margin, 0.05 + s_margin);
    }

    /// <summary>Eight baseline runs, each of which meets each of five delayed runs: either kind of run alone gives 0.040 to 0.066, both together 0.035 to 0.042.</summary>
    [Fact]
    public void Runs_that_cross()
    {
        var (baseline, delayed) = (Numbers(i => i % 8), Numbers(i => i / 8));
        var (bySpecimen, byRule) = FalseClaims(
            [new(IntervalSource.BaselineRuns, baseline), new(IntervalSource.DelayedRuns, delayed)],
            random =>
                Sum(
                    Normal(random, 3),
                    Normal(random, 2),
                    Shared(random, baseline, 3),
                    Shared(random, delayed, 3)
                )
        );

        Assert.True(bySpecimen > 0.083);
        Assert.InRange(byRule, 0.035 - s_margin, 0.042 + s_margin);
    }

    /// <summary>Ten days whose delayed results were tested in five runs: days alone 0.072 to 0.086, the rule 0.037 to 0.044.</summary>
    [Fact]
    public void Five_delayed_runs_of_ten_days()
    {
        var delayed = Numbers(i => i % 10 / 2);
        double[] Draw(SeededRandom random) =>
            Sum(
                Normal(random, 3),
                Normal(random, 2),
                Shared(random, s_tenDays, 3),
                Shared(random, delayed, 3)
            );
        var days = new Clustering(IntervalSource.CollectionDays, s_tenDays);

        var (_, byDays) = FalseClaims([days], Draw);
        var (_, byRule) = FalseClaims([days, new(IntervalSource.DelayedRuns, delayed)], Draw);

        Assert.InRange(byDays, 0.072 - s_margin, 0.086 + s_margin);
        Assert.InRange(byRule, 0.037 - s_margin, 0.044 + s_margin);
    }

    /// <summary>A long tail upward where the limit is an upper one: the plain widest interval 0.045 to 0.064, the rule 0.038 to 0.052.</summary>
    [Theory]
    [InlineData(1.41)]
    [InlineData(0.0)]
    public void Very_skewed_changes(double runDeviation)
    {
        var (plain, byRule) = FalseClaims(
            [new(IntervalSource.CollectionDays, s_tenDays)],
            random =>
                Sum(
                    Skewed(random, 3),
                    Normal(random, 2),
                    Shared(random, s_tenDays, runDeviation),
                    Shared(random, s_tenDays, runDeviation)
                ),
            mean => mean.ByCluster.Select(item => item.Upper).Append(mean.BySpecimen.Upper).Max()
        );

        Assert.InRange(plain, 0.045 - s_margin, 0.064 + s_margin);
        Assert.InRange(byRule, 0.038 - s_margin, 0.052 + s_margin);
        Assert.True(plain > byRule);
    }

    /// <summary>Five persons with eight draws each, who differ by 3 %: without them 0.13, with them 0.047.</summary>
    [Fact]
    public void Draws_of_the_same_persons()
    {
        var persons = Numbers(i => i / 8);
        var days = new Clustering(IntervalSource.CollectionDays, s_tenDays);
        double[] Draw(SeededRandom random) =>
            Sum(
                Shared(random, persons, 3),
                Normal(random, 3),
                Normal(random, 2),
                Shared(random, s_tenDays, 1.41),
                Shared(random, s_tenDays, 1.41)
            );

        var (_, without) = FalseClaims([days], Draw);
        var (_, byRule) = FalseClaims([days, new(IntervalSource.Persons, persons)], Draw);

        Assert.True(without > 0.1);
        Assert.InRange(byRule, 0.047 - s_margin, 0.05 + s_margin);
    }

    /// <summary>How often an end, that over specimens where nothing else is said, and the deciding end lie below the limit.</summary>
    private static (double Other, double ByRule) FalseClaims(
        ImmutableArray<Clustering> clusterings,
        Func<SeededRandom, double[]> draw,
        Func<ClusteredMeanInterval, double>? otherEnd = null
    )
    {
        var random = new SeededRandom(20_261_129);
        var (other, byRule) = (0, 0);
        for (var repetition = 0; repetition < Repetitions; repetition++)
        {
            double[] changes = [.. draw(random).Select(error => Limit + error)];
            var mean = Computed.Value(ClusteredMean.WithInterval(changes, clusterings, 0.9));
            other += (otherEnd?.Invoke(mean) ?? mean.BySpecimen.Upper) < Limit ? 1 : 0;
            byRule += mean.Upper < Limit ? 1 : 0;
        }

        return ((double)other / Repetitions, (double)byRule / Repetitions);
    }

    private static ImmutableArray<int> Numbers(Func<int, int> number) =>
        [.. Enumerable.Range(0, Specimens).Select(number)];

    private static double[] Normal(SeededRandom random, double deviation) =>
        [.. Enumerable.Range(0, Specimens).Select(_ => deviation * random.NextNormal())];

    /// <summary>Lognormal with σ = 1, moved and scaled to mean 0 and the stated SD.</summary>
    private static double[] Skewed(SeededRandom random, double deviation)
    {
        var spread = Math.Sqrt((Math.E - 1) * Math.E);
        return
        [
            .. Enumerable
                .Range(0, Specimens)
                .Select(_ => deviation * (Math.Exp(random.NextNormal()) - Math.Exp(0.5)) / spread),
        ];
    }

    private static double[] Shared(
        SeededRandom random,
        ImmutableArray<int> cluster,
        double deviation
    )
    {
        double[] shifts =
        [
            .. Enumerable.Range(0, cluster.Max() + 1).Select(_ => deviation * random.NextNormal()),
        ];
        return [.. cluster.Select(number => shifts[number])];
    }

    private static double[] Sum(params double[][] parts) =>
        [.. Enumerable.Range(0, Specimens).Select(i => parts.Sum(part => part[i]))];
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>Changes and levels of pairs on the log scale, to be fitted within clusters that share an error.</summary>
/// <param name="Baselines">100·ln x.</param>
/// <param name="Levels">L = 100·(ln x + ln y)/2.</param>
/// <param name="Changes">D = 100·ln(y/x).</param>
/// <param name="DegreesOfFreedom">n − clusters − parameters; one cluster where every pair has its own.</param>
internal sealed record ChangesWithin(
    double[] Baselines,
    double[] Levels,
    double[] Changes,
    int DegreesOfFreedom
)
{
    private ImmutableArray<int> Cluster { get; init; }

    /// <summary>The changes of pairs; or a value that is not above zero, or too few pairs.</summary>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="cluster">Which pairs share an error, a number for each pair; clusters of one pair each count as none.</param>
    /// <param name="parameters">How many slopes are to be fitted.</param>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static Estimate<ChangesWithin> Clusters(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ImmutableArray<int> cluster,
        int parameters
    )
    {
        PairedValues.Require(x, y);
        if (cluster.Length != x.Length)
        {
            throw new ArgumentException("Each pair needs a cluster.", nameof(cluster));
        }

        var (baselines, levels, changes) = (
            new double[x.Length],
            new double[x.Length],
            new double[x.Length]
        );
        for (var i = 0; i < x.Length; i++)
        {
            if (x[i] <= 0 || y[i] <= 0)
            {
                return Estimate.Refused<ChangesWithin>(Refusal.NotPositiveForLogarithm);
            }

            baselines[i] = 100 * Math.Log(x[i]);
            levels[i] = (baselines[i] + (100 * Math.Log(y[i]))) / 2;
            changes[i] = 100 * (Math.Log(y[i]) - Math.Log(x[i]));
        }

        var clusters = cluster.Distinct().Count();
        var own = clusters == x.Length;
        var degreesOfFreedom = x.Length - (own ? 1 : clusters) - parameters;
        return degreesOfFreedom < 1
            ? Estimate.Refused<ChangesWithin>(Refusal.TooFewForLine)
            : Estimate.Of(
                new ChangesWithin(baselines, levels, changes, degreesOfFreedom)
                {
                    Cluster = own ? [.. cluster.Select(_ => 0)] : cluster,
                }
            );
    }

    /// <summary>Values less the mean of their cluster.</summary>
    public double[] Centered(double[] values)
    {
        var means = values
            .Zip(Cluster)
            .GroupBy(item => item.Second, item => item.First)
            .ToDictionary(group => group.Key, group => group.Average());
        return [.. values.Select((value, i) => value - means[Cluster[i]])];
    }

    /// <summary>Two-sided p value of a coefficient.</summary>
    public static double PValue(double value, double standardError, double degreesOfFreedom) =>
        value == 0 ? 1
        : standardError == 0 ? 0
        : 2 * StudentT.Cdf(-Math.Abs(value) / standardError, degreesOfFreedom);
}

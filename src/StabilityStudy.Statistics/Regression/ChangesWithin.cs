using StabilityStudy.Statistics.Location;

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
    /// <summary>The cluster of each pair, from 0 on.</summary>
    private int[] Cluster { get; init; } = [];

    private int ClusterCount { get; init; }

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

            var (lnX, lnY) = (Math.Log(x[i]), Math.Log(y[i]));
            baselines[i] = 100 * lnX;
            levels[i] = (baselines[i] + (100 * lnY)) / 2;
            changes[i] = 100 * (lnY - lnX);
        }

        var numbers = new Numbering<int>();
        int[] numbered = [.. cluster.Select(numbers.Of)];
        var own = numbers.Count == x.Length;
        var clusters = own ? 1 : numbers.Count;
        var degreesOfFreedom = x.Length - clusters - parameters;
        return degreesOfFreedom < 1
            ? Estimate.Refused<ChangesWithin>(Refusal.TooFewForLine)
            : Estimate.Of(
                new ChangesWithin(baselines, levels, changes, degreesOfFreedom)
                {
                    Cluster = own ? new int[x.Length] : numbered,
                    ClusterCount = clusters,
                }
            );
    }

    /// <summary>Values less the mean of their cluster.</summary>
    public double[] Centered(double[] values)
    {
        var (sums, counts) = (new double[ClusterCount], new int[ClusterCount]);
        for (var i = 0; i < values.Length; i++)
        {
            sums[Cluster[i]] += values[i];
            counts[Cluster[i]]++;
        }

        var centered = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            centered[i] = values[i] - (sums[Cluster[i]] / counts[Cluster[i]]);
        }

        return centered;
    }

    /// <summary>Two-sided p value of a coefficient.</summary>
    public static double PValue(double value, double standardError, double degreesOfFreedom) =>
        value == 0 ? 1
        : standardError == 0 ? 0
        : 2 * StudentT.Cdf(-Math.Abs(value) / standardError, degreesOfFreedom);
}

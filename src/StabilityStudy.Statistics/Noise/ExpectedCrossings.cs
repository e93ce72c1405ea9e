namespace StabilityStudy.Statistics.Noise;

/// <summary>
/// How many unchanged specimens are expected to show a second result on the other side of a level by imprecision alone:
/// Σ Φ(−|x − L|/σ(x)), with σ(x) = noise/100·|x| the standard deviation of one difference and Φ the normal distribution. With several
/// levels, which cut the results into classes, those nearest to x on either side count: Σ Φ(−(x − a)/σ(x)) + Φ(−(b − x)/σ(x)).
/// </summary>
/// <remarks>
/// The probability for one specimen follows from a difference of second and first result that is normal with mean 0
/// (JCGM 100:2008, annex G, for the propagation; cited from memory).
/// Approximations: the first result stands in for the true value, which presumes that specimens near the level are about equally
/// frequent on either side of it and spread far more widely than the noise (in a narrow group results return toward the group's mean,
/// and fewer or more change sides than stated); σ is taken at the first result and kept for the second; errors are normal and
/// independent; rounding to the reporting increment is not taken into account.
/// The number of specimens that do change sides is spread about this expectation like a sum of independent yes-or-no trials, with a
/// variance of at most the expectation itself. A value exactly on the level counts one half. Without noise, or at zero, none is expected.
/// </remarks>
public static class ExpectedCrossings
{
    /// <summary>Computes the expected number of specimens.</summary>
    /// <param name="baselines">First results, in the analyte's unit; may be empty.</param>
    /// <param name="levels">The levels, in the same unit, in any order; may be empty. One at the first result counts as below it.</param>
    /// <param name="noisePercent">Standard deviation of one difference in percent of the first result, 0 or above.</param>
    /// <exception cref="ArgumentException">An argument is not a number, or the noise is negative.</exception>
    public static double Number(
        ReadOnlySpan<double> baselines,
        ReadOnlySpan<double> levels,
        double noisePercent
    )
    {
        Require.Numbers(baselines, nameof(baselines));
        Require.Numbers(levels, nameof(levels));
        Require.Number(noisePercent, nameof(noisePercent));
        if (noisePercent < 0)
        {
            throw new ArgumentException("Noise is not negative.", nameof(noisePercent));
        }

        var expected = 0.0;
        foreach (var baseline in baselines)
        {
            var deviation = noisePercent / 100 * Math.Abs(baseline);
            if (deviation > 0)
            {
                var (below, above) = Nearest(baseline, levels);
                expected += Normal.Cdf(-below / deviation) + Normal.Cdf(-above / deviation);
            }
        }

        return expected;
    }

    /// <summary>Distances to the nearest level at or below and to the nearest above; infinite without one.</summary>
    private static (double Below, double Above) Nearest(
        double baseline,
        ReadOnlySpan<double> levels
    )
    {
        var (below, above) = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (var level in levels)
        {
            if (level <= baseline)
            {
                below = Math.Min(below, baseline - level);
            }
            else
            {
                above = Math.Min(above, level - baseline);
            }
        }

        return (below, above);
    }
}

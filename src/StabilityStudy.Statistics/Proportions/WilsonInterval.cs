using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Proportions;

/// <summary>
/// Wilson's score interval of a share, without continuity correction: [p̂ + z²/2n ± z·√(p̂(1 − p̂)/n + z²/4n²)]/(1 + z²/n).
/// </summary>
/// <remarks>
/// Source: Wilson (1927), J Am Stat Assoc 22:209–212 (cited from memory). Its coverage is near the level on average but falls below it for some shares: a description; claims use
/// <see cref="ClopperPearson"/>. Assumptions: independent trials with one probability of success.
/// </remarks>
internal static class WilsonInterval
{
    /// <summary>Computes the two-sided interval; exactly 0 without a success, exactly 1 without a failure.</summary>
    /// <param name="successes">Number of successes, from 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Number of trials, at least 1.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static IntervalBounds Bounds(int successes, int trials, double confidenceLevel)
    {
        ClopperPearson.RequireCounts(successes, trials);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        var z = Normal.Quantile((1 + confidenceLevel) / 2);
        double n = trials;
        var share = successes / n;
        var center = share + (z * z / (2 * n));
        var reach = z * Math.Sqrt((share * (1 - share) / n) + (z * z / (4 * n * n)));
        var scale = 1 + (z * z / n);
        return new IntervalBounds(
            successes == 0 ? 0 : (center - reach) / scale,
            successes == trials ? 1 : (center + reach) / scale
        );
    }
}

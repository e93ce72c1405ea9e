namespace StabilityStudy.Statistics.Noise;

/// <summary>How far two results of one unchanged specimen are expected to lie apart by the imprecision of the method alone.</summary>
/// <remarks>
/// Standard deviation of the difference of two means of r₁ and r₂ replicates: √(CV²/r₁ + CV²/r₂), the propagation of independent
/// errors (JCGM 100:2008, clause 5.1.2, cited from memory). Assumptions: independent errors of one coefficient of variation in both halves; a component that
/// replicates of one run share is not divided by their number, so that with replicates the value is a lower bound.
/// </remarks>
public static class ExpectedDifference
{
    /// <summary>Standard deviation of one difference, in percent of the level.</summary>
    /// <param name="cvPercent">Coefficient of variation of one result in percent, 0 or above.</param>
    /// <param name="baselineReplicates">Results averaged into the first member, at least 1.</param>
    /// <param name="delayedReplicates">Results averaged into the second member, at least 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double StandardDeviationPercent(
        double cvPercent,
        int baselineReplicates,
        int delayedReplicates
    )
    {
        Require.Number(cvPercent, nameof(cvPercent));
        if (cvPercent < 0)
        {
            throw new ArgumentException(
                "A coefficient of variation is not negative.",
                nameof(cvPercent)
            );
        }

        RequireReplicates(baselineReplicates, nameof(baselineReplicates));
        RequireReplicates(delayedReplicates, nameof(delayedReplicates));
        return cvPercent * Math.Sqrt((1.0 / baselineReplicates) + (1.0 / delayedReplicates));
    }

    private static void RequireReplicates(int replicates, string parameter)
    {
        if (replicates < 1)
        {
            throw new ArgumentException("There is at least one result.", parameter);
        }
    }
}

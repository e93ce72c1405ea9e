namespace StabilityStudy.Statistics.Agreement;

/// <summary>Two one-sided t tests of whether a mean lies between two limits.</summary>
/// <param name="LowerLimit">Lower limit, in the unit of the mean.</param>
/// <param name="UpperLimit">Upper limit, same unit.</param>
/// <param name="PValueLower">One-sided p value against "the mean is at or below the lower limit".</param>
/// <param name="PValueUpper">One-sided p value against "the mean is at or above the upper limit".</param>
/// <param name="PValue">The larger of the two: the p value of "not equivalent".</param>
public sealed record EquivalenceTest(
    double LowerLimit,
    double UpperLimit,
    double PValueLower,
    double PValueUpper,
    double PValue
);

/// <summary>
/// Two one-sided tests (TOST): p = max(P(T ≥ (mean − lower)/SE), P(T ≤ (mean − upper)/SE)) with T a t variable.
/// </summary>
/// <remarks>
/// Source: Schuirmann (1987), Journal of Pharmacokinetics and Biopharmaceutics 15:657–680 (cited from memory). p below α is the same as the two-sided
/// interval of level 1 − 2α lying strictly inside the limits. Assumptions: those of the t interval that the standard error comes from.
/// </remarks>
public static class TwoOneSidedTests
{
    /// <summary>Computes both tests.</summary>
    /// <param name="mean">The mean, in some unit.</param>
    /// <param name="standardError">Its standard error, same unit, zero or above.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the standard error, at least 1.</param>
    /// <param name="lowerLimit">Lower limit, same unit.</param>
    /// <param name="upperLimit">Upper limit, same unit, above the lower one.</param>
    /// <returns>Standard error zero: <see cref="AssumptionCode.ZeroSpread"/>.</returns>
    /// <exception cref="ArgumentException">An argument is not a number or outside its range.</exception>
    public static Estimate<EquivalenceTest> Compute(
        double mean,
        double standardError,
        double degreesOfFreedom,
        double lowerLimit,
        double upperLimit
    )
    {
        Require.Number(mean, nameof(mean));
        Require.Number(standardError, nameof(standardError));
        Require.DegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        Require.Number(lowerLimit, nameof(lowerLimit));
        Require.Number(upperLimit, nameof(upperLimit));
        if (standardError < 0)
        {
            throw new ArgumentException("A standard error is not negative.", nameof(standardError));
        }

        if (lowerLimit >= upperLimit)
        {
            throw new ArgumentException(
                "The lower limit must be below the upper one.",
                nameof(upperLimit)
            );
        }

        if (standardError == 0)
        {
            return Estimate.Refused<EquivalenceTest>(Refusal.SameValuesForTTest);
        }

        var lower = StudentT.Cdf((lowerLimit - mean) / standardError, degreesOfFreedom);
        var upper = StudentT.Cdf((mean - upperLimit) / standardError, degreesOfFreedom);
        return Estimate.Of(
            new EquivalenceTest(lowerLimit, upperLimit, lower, upper, Math.Max(lower, upper))
        );
    }
}

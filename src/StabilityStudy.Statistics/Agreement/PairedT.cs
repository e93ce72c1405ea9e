using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Agreement;

/// <summary>The t test of a mean difference of zero.</summary>
/// <param name="T">Mean divided by its standard error.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard error.</param>
/// <param name="PValue">Two-sided p value.</param>
public sealed record PairedTTest(double T, double DegreesOfFreedom, double PValue);

/// <summary>
/// Paired t test: t = mean/SE, two-sided p = 2·P(T ≥ |t|). Shown beside an equivalence test so that a reader sees that
/// "no significant difference" is not equivalence.
/// </summary>
/// <remarks>
/// Source: Student (1908), Biometrika 6:1–25 (cited from memory). Assumptions: independent differences, mean close to normally distributed.
/// </remarks>
public static class PairedT
{
    /// <summary>Computes the test from the mean difference and its standard error.</summary>
    /// <returns>Standard error zero: <see cref="AssumptionCode.ZeroSpread"/>.</returns>
    public static Estimate<PairedTTest> Compute(MeanInterval difference)
    {
        if (difference.StandardError == 0)
        {
            return Estimate.Refused<PairedTTest>(Refusal.SameValuesForTTest);
        }

        var t = difference.Mean / difference.StandardError;
        return Estimate.Of(
            new PairedTTest(
                t,
                difference.DegreesOfFreedom,
                2 * StudentT.Cdf(-Math.Abs(t), difference.DegreesOfFreedom)
            )
        );
    }
}

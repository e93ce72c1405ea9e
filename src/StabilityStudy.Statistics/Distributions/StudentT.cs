namespace StabilityStudy.Statistics.Distributions;

/// <summary>Student's t distribution.</summary>
/// <remarks>
/// The upper tail for t ≥ 0 is ½·I(ν/2, ½) at ν/(ν + t²), with I the regularized incomplete beta function.
/// Source: Student (1908), Biometrika 6:1–25; Abramowitz and Stegun (1964), equations 26.5.27 and 26.7.1 (cited from memory).
/// Numerical limits: relative error of a tail below 10⁻¹² for degrees of freedom up to 10⁴.
/// </remarks>
public static class StudentT
{
    /// <summary>Below this the tail is one half to the last bit, so the quantile is not resolved further.</summary>
    private const double SmallestScale = 1e-16;

    /// <summary>The value that a t variable stays at or below with the given probability.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <param name="degreesOfFreedom">At least 1; need not be whole.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Require.InsideUnitInterval(probability, nameof(probability));
        Require.DegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        if (probability == 0.5)
        {
            return 0;
        }

        var tail = Math.Min(probability, 1 - probability);
        var upper = 1.0;
        while (UpperTail(upper, degreesOfFreedom) > tail)
        {
            upper *= 2;
        }

        var magnitude = BracketedRoot.Find(
            t => tail - UpperTail(t, degreesOfFreedom),
            upper == 1 ? 0 : upper / 2,
            upper,
            SmallestScale
        );
        return probability < 0.5 ? -magnitude : magnitude;
    }

    /// <summary>Probability that a t variable is at most <paramref name="t"/>.</summary>
    /// <param name="t">Any number, infinities included.</param>
    /// <param name="degreesOfFreedom">At least 1; need not be whole.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Cdf(double t, double degreesOfFreedom)
    {
        if (double.IsNaN(t))
        {
            throw new ArgumentException("The value must be a number.", nameof(t));
        }

        Require.DegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        var tail = UpperTail(Math.Abs(t), degreesOfFreedom);
        return t < 0 ? tail : 1 - tail;
    }

    private static double UpperTail(double t, double degreesOfFreedom)
    {
        // 1/(1 + t²/ν) and its complement, each with all its digits, whatever the size of t.
        var odds = t / degreesOfFreedom * t;
        return double.IsInfinity(odds)
            ? 0
            : IncompleteBeta.Regularized(
                degreesOfFreedom / 2,
                0.5,
                1 / (1 + odds),
                odds / (1 + odds)
            ) / 2;
    }
}

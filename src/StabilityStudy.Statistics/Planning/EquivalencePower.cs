using MathNet.Numerics.Integration;

namespace StabilityStudy.Statistics.Planning;

/// <summary>
/// Probability that the t interval of a mean change lies strictly inside two limits (two one-sided tests), when the changes are
/// independent and normal with a known mean and standard deviation.
/// </summary>
/// <remarks>
/// With mean change Δ, standard error τ = σ/√n, ν = n − 1 and t the (1 + level)/2 quantile, the interval m ± t·τ·w lies inside when
/// lower + t·τ·w &lt; m &lt; upper − t·τ·w, where w² is χ²/ν. Mean and w are independent, so the power is
/// ∫ [Φ((upper − Δ)/τ − t·w) − Φ((lower − Δ)/τ + t·w)]·f(w) dw from 0 to (upper − lower)/(2·t·τ); wider intervals fit nowhere.
/// Source: Phillips (1990), Journal of Pharmacokinetics and Biopharmaceutics 18:137–144; Owen (1965), Biometrika 52:437–446 for the same
/// probability (both cited from memory). The difference of two noncentral t probabilities is not used: it lets m lie between crossed
/// bounds and is off by up to 0.07 at small n.
/// Numerical limits: Gauss–Legendre panels no wider than four widths of the narrower factor; absolute error below 10⁻¹⁰.
/// </remarks>
public static class EquivalencePower
{
    /// <summary>By concentration of the χ distribution less than 10⁻¹⁷ of it lies more than nine of these widths (1/√ν) from 1.</summary>
    private const double Reach = 9;

    /// <summary>A panel spans four standard widths of the narrower factor, over which twenty points integrate to the last digits.</summary>
    private const double PanelWidths = 4;

    private const int PointsOfPanel = 20;

    /// <summary>Power of the paired criterion.</summary>
    /// <param name="n">Number of pairs, at least 2.</param>
    /// <param name="meanChange">True mean change, in the unit of the limits.</param>
    /// <param name="standardDeviation">True standard deviation of the changes, above 0, in the same unit.</param>
    /// <param name="lower">Lower limit.</param>
    /// <param name="upper">Upper limit, above the lower.</param>
    /// <param name="confidenceLevel">Two-sided level of the interval (0.90 for two one-sided tests at 5 %).</param>
    /// <returns>A probability; 0 also where no interval is ever narrow enough.</returns>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Of(
        int n,
        double meanChange,
        double standardDeviation,
        double lower,
        double upper,
        double confidenceLevel
    )
    {
        if (n < 2)
        {
            throw new ArgumentException("There are at least two pairs.", nameof(n));
        }

        if (!(standardDeviation > 0))
        {
            throw new ArgumentException(
                "The standard deviation must be above zero.",
                nameof(standardDeviation)
            );
        }

        Require.Number(standardDeviation, nameof(standardDeviation));
        return OfStandardError(
            standardDeviation / Math.Sqrt(n),
            n - 1,
            meanChange,
            lower,
            upper,
            confidenceLevel
        );
    }

    /// <summary>The same for any estimate with a standard error of its own degrees of freedom, such as a two-period crossover (n − 2).</summary>
    public static double OfStandardError(
        double standardError,
        int degreesOfFreedom,
        double meanChange,
        double lower,
        double upper,
        double confidenceLevel
    )
    {
        Require.Number(meanChange, nameof(meanChange));
        Require.Number(lower, nameof(lower));
        Require.Number(upper, nameof(upper));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (!(lower < upper))
        {
            throw new ArgumentException("The upper limit lies above the lower.", nameof(upper));
        }

        var t = StudentT.Quantile((1 + confidenceLevel) / 2, degreesOfFreedom);
        var below = (lower - meanChange) / standardError;
        var above = (upper - meanChange) / standardError;
        var reach = Reach / Math.Sqrt(degreesOfFreedom);
        var (start, end) = (Math.Max(0, 1 - reach), 1 + reach);
        var widest = Math.Clamp((above - below) / (2 * t), start, end);
        var panel = PanelWidths * Math.Min(1 / Math.Sqrt(2.0 * degreesOfFreedom), 1 / t);

        var fitting = Integral(Density, start, widest, panel);
        var inside = Integral(
            w => Density(w) * (Normal.Cdf(above - (t * w)) - Normal.Cdf(below + (t * w))),
            start,
            widest,
            panel
        );
        return Math.Clamp(inside / (fitting + Integral(Density, widest, end, panel)), 0, 1);

        // Up to a constant factor, which the division by the whole mass removes; 1 at the peak of w·f(w).
        double Density(double w) =>
            Math.Exp(
                ((degreesOfFreedom - 1) * Math.Log(w)) - (degreesOfFreedom * ((w * w) - 1) / 2)
            );
    }

    private static double Integral(Func<double, double> f, double from, double to, double panel)
    {
        var panels = (int)Math.Ceiling((to - from) / panel);
        var sum = 0.0;
        for (var i = 0; i < panels; i++)
        {
            sum += GaussLegendreRule.Integrate(
                f,
                from + ((to - from) * i / panels),
                from + ((to - from) * (i + 1) / panels),
                PointsOfPanel
            );
        }

        return sum;
    }
}

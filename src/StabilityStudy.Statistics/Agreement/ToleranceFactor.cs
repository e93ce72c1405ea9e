using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace StabilityStudy.Statistics.Agreement;

/// <summary>
/// Factors k of normal tolerance intervals: mean ± k·s holds at least a share of the population with the given confidence.
/// </summary>
/// <remarks>
/// Exact two-sided: confidence = 2∫φ(z)·P(χ² ≥ ν·r(z)²/k²) dz from 0 on, ν = n − 1, r(z) the half width about z/√n that holds the share, Φ(z/√n + r) − Φ(z/√n − r) = share
/// (Wald and Wolfowitz 1946, Annals of Mathematical Statistics 17:208–215; Odeh and Owen 1980; ISO 16269-6; cited from memory).
/// Howe (1969), J Am Stat Assoc 64:610–620: k = Φ⁻¹((1 + share)/2)·√(ν(1 + 1/n)/χ²(1 − confidence; ν)).
/// One-sided: t′(confidence; ν, Φ⁻¹(share)·√n)/√n.
/// Assumptions: independent values of one normal distribution; a skewed one is not covered as stated, however large n.
/// Numerical limits: Gauss–Legendre rule of 96 points over 0 to 9; relative error below 10⁻⁸ for n from 2 to 10⁴.
/// </remarks>
public static class ToleranceFactor
{
    /// <summary>The normal density beyond this is below 10⁻¹⁷.</summary>
    private const double Reach = 9;

    private const int Points = 96;

    /// <summary>The exact two-sided factor.</summary>
    /// <param name="n">Number of values, from 2 to 10,000.</param>
    /// <param name="coverage">Share of the population, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double TwoSided(int n, double coverage, double confidenceLevel)
    {
        Check(n, coverage, confidenceLevel);
        var rule = new GaussLegendreRule(0, Reach, Points);
        var widths = new double[Points];
        var weights = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            var z = rule.Abscissas[i];
            widths[i] = HalfWidth(z / Math.Sqrt(n), coverage);
            weights[i] = rule.Weights[i] * Constants.InvSqrt2Pi * Math.Exp(-z * z / 2) * 2;
        }

        var upper = 1.0;
        while (Excess(upper) < 0)
        {
            upper *= 2;
        }

        return BracketedRoot.Find(Excess, upper == 1 ? 1e-9 : upper / 2, upper, 1);

        double Excess(double k)
        {
            var confidence = 0.0;
            for (var i = 0; i < Points; i++)
            {
                var width = widths[i] / k;
                confidence += weights[i] * ChiSquared.UpperTail((n - 1) * width * width, n - 1);
            }

            return confidence - confidenceLevel;
        }
    }

    /// <summary>Howe's two-sided factor, close to the exact one.</summary>
    /// <param name="n">Number of values, from 2 to 10,000.</param>
    /// <param name="coverage">Share of the population, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Howe(int n, double coverage, double confidenceLevel)
    {
        Check(n, coverage, confidenceLevel);
        double degrees = n - 1;
        var quantile = ChiSquared.UpperQuantile(confidenceLevel, degrees);
        return Normal.Quantile((1 + coverage) / 2)
            * Math.Sqrt(degrees * (1 + (1.0 / n)) / quantile);
    }

    /// <summary>The exact one-sided factor: at least the share lies below mean + k·s (or above mean − k·s).</summary>
    /// <param name="n">Number of values, from 2 to 10,000.</param>
    /// <param name="coverage">Share of the population, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double OneSided(int n, double coverage, double confidenceLevel)
    {
        Check(n, coverage, confidenceLevel);
        var root = Math.Sqrt(n);
        return NoncentralT.Quantile(confidenceLevel, n - 1, Normal.Quantile(coverage) * root)
            / root;
    }

    private static double HalfWidth(double center, double coverage) =>
        BracketedRoot.Find(
            r => Normal.Cdf(center + r) - Normal.Cdf(center - r) - coverage,
            0,
            center + Normal.Quantile((1 + coverage) / 2) + 1e-9,
            1
        );

    private static void Check(int n, double coverage, double confidenceLevel)
    {
        if (n is < 2 or > LargestSample.Tolerance)
        {
            throw new ArgumentException("There are from 2 to 10,000 values.", nameof(n));
        }

        Require.InsideUnitInterval(coverage, nameof(coverage));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
    }
}

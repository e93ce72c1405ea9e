namespace StabilityStudy.Statistics.Regression;

/// <summary>Pearson's correlation coefficient with its interval.</summary>
/// <param name="Pearson">r, from −1 to 1.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
public sealed record CorrelationCoefficient(double Pearson, double Lower, double Upper);

/// <summary>
/// Pearson's correlation. It says how closely pairs follow some straight line over the range at hand, not whether y agrees with x: a description only.
/// </summary>
public static class PearsonCorrelation
{
    private const int FewestPairs = 4;

    /// <summary>
    /// r = Sxy/√(Sxx·Syy); interval tanh(artanh r ± z/√(n − 3)) (Fisher, Metron 1 (1921) 3–32; from memory). Assumes independent pairs from a bivariate normal
    /// distribution for the interval. Smallest n: 4. Where r is ±1 to the precision of a double the interval has no width.
    /// </summary>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members, same length.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>r with its interval; or too few values, a constant x (constant baseline) or a constant y (zero spread).</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the level is not between 0 and 1.</exception>
    public static Estimate<CorrelationCoefficient> Compute(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double confidenceLevel
    )
    {
        PairedValues.Require(x, y);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (PairedValues.WhyNoLine(x, FewestPairs, Refusal.TooFewForCorrelation) is { } reason)
        {
            return Estimate.Refused<CorrelationCoefficient>(reason);
        }

        if (PairedValues.AreConstant(y))
        {
            return Estimate.Refused<CorrelationCoefficient>(Refusal.SameSecondValues);
        }

        var sums = CenteredSums.Of(x, y);
        var r = Math.Clamp(sums.Sxy / Math.Sqrt(sums.Sxx) / Math.Sqrt(sums.Syy), -1, 1);
        var margin = Normal.Quantile((1 + confidenceLevel) / 2) / Math.Sqrt(x.Length - 3);
        return Estimate.Of(
            new CorrelationCoefficient(
                r,
                Math.Tanh(Math.Atanh(r) - margin),
                Math.Tanh(Math.Atanh(r) + margin)
            )
        );
    }
}

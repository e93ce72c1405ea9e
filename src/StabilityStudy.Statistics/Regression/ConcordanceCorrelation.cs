namespace StabilityStudy.Statistics.Regression;

/// <summary>Lin's concordance correlation coefficient with its interval.</summary>
/// <param name="Concordance">ρc, from −1 to 1.</param>
/// <param name="Accuracy">C_b = ρc/r, from 0 to 1: how near the pairs' best line lies to y = x.</param>
/// <param name="StandardError">Asymptotic standard error of ρc.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="ConfidenceLevel">Two-sided level of the interval.</param>
public sealed record ConcordanceCoefficient(
    double Concordance,
    double Accuracy,
    double StandardError,
    double Lower,
    double Upper,
    double ConfidenceLevel
);

/// <summary>
/// Lin's concordance correlation: how closely pairs lie to y = x, relative to the spread of the specimens. A wide range of specimens alone makes it large: a description only.
/// </summary>
public static class ConcordanceCorrelation
{
    private const int FewestPairs = 4;

    /// <summary>
    /// ρc = 2s_xy/(s_x² + s_y² + (x̄ − ȳ)²) with moments of divisor n (Lin, Biometrics 45 (1989) 255–268). With C_b = ρc/r and u² = (x̄ − ȳ)²/(s_x·s_y),
    /// SE² = [C_b²(1 − r²)(1 − ρc²) + 2ρc²C_b(1 − ρc)u² − ρc²C_b²u⁴/2]/(n − 2), as corrected in Lin, Biometrics 56 (2000) 324–325 (2 in place of 4; both from memory; written without dividing by r);
    /// interval tanh(artanh ρc ± z·SE/(1 − ρc²)). Assumes independent pairs of a bivariate normal distribution. Ties and zeros need no treatment. Smallest n: 4. Pairs exactly on
    /// y = x, or on its mirror, give an interval without width.
    /// </summary>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>ρc with its interval; or too few values, a constant x (constant baseline) or a constant y (zero spread).</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the level is not between 0 and 1.</exception>
    public static Estimate<ConcordanceCoefficient> Compute(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double confidenceLevel
    )
    {
        PairedValues.Require(x, y);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (PairedValues.WhyNoLine(x, FewestPairs, Refusal.TooFewForConcordance) is { } reason)
        {
            return Estimate.Refused<ConcordanceCoefficient>(reason);
        }

        if (PairedValues.AreConstant(y))
        {
            return Estimate.Refused<ConcordanceCoefficient>(Refusal.SameSecondValues);
        }

        var n = x.Length;
        var sums = CenteredSums.Of(x, y);
        var shift = sums.MeanX - sums.MeanY;
        var product = Math.Sqrt(sums.Sxx) * Math.Sqrt(sums.Syy);
        var accuracy = 2 * product / (sums.Sxx + sums.Syy + (n * shift * shift));
        var r = Math.Clamp(sums.Sxy / product, -1, 1);
        var concordance = Math.Clamp(r * accuracy, -1, 1);
        var u2 = n * shift * shift / product;
        var variance =
            (
                (accuracy * accuracy * (1 - (r * r)) * (1 - (concordance * concordance)))
                + (2 * concordance * concordance * accuracy * (1 - concordance) * u2)
                - (concordance * concordance * accuracy * accuracy * u2 * u2 / 2)
            ) / (n - 2);

        // Rounding can leave a variance just below zero where every pair lies on one line.
        var standardError = Math.Sqrt(Math.Max(variance, 0));

        // At −1 and 1 the scale of the interval has no end, and rounding can leave an error above zero there.
        var margin =
            standardError == 0 || Math.Abs(concordance) == 1
                ? 0
                : Normal.Quantile((1 + confidenceLevel) / 2)
                    * standardError
                    / (1 - (concordance * concordance));
        return Estimate.Of(
            new ConcordanceCoefficient(
                concordance,
                accuracy,
                standardError,
                Math.Tanh(Math.Atanh(concordance) - margin),
                Math.Tanh(Math.Atanh(concordance) + margin),
                confidenceLevel
            )
        );
    }
}

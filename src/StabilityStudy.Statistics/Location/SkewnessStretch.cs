namespace StabilityStudy.Statistics.Location;

/// <summary>By how much the two halves of a t interval are lengthened because the values are skewed; 1 leaves a half as it is.</summary>
/// <remarks>
/// Hall's transformation, used with the quantile of t: with g the skewness G₁, q = t((1 + level)/2; n − 1) and
/// inv(x) = (3/g)·(∛(1 + g·(x − g/(6n))) − 1), upward is max(1, −√n·inv(−q/√n)/q) and downward max(1, √n·inv(q/√n)/q). The cubic transformation has an inverse everywhere, so no case is left out.
/// A half is never shortened. Source: Hall (1992), Journal of the Royal Statistical Society B 54:221–228 (cited from memory); t in place of the normal quantile is our own choice.
/// Assumptions: independent values; too short for the rarest values, which a sample may not hold at all.
/// </remarks>
/// <param name="Skewness">Skewness G₁ of the values, without unit; 0 with fewer than three values or without spread.</param>
/// <param name="Downward">Factor of the half below the mean, at least 1.</param>
/// <param name="Upward">Factor of the half above the mean, at least 1.</param>
public sealed record SkewnessStretch(double Skewness, double Downward, double Upward)
{
    /// <summary>Below this the transformation is the identity but for rounding.</summary>
    private const double LeastSkewness = 1e-9;

    /// <summary>Computes both factors.</summary>
    /// <param name="values">Numbers in one unit, at least two; not written to. Ties and zeros are ordinary values.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two values, a value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static SkewnessStretch Compute(ReadOnlySpan<double> values, double confidenceLevel)
    {
        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (values.Length < 2)
        {
            throw new ArgumentException("There are at least two values.", nameof(values));
        }

        var skewness = Spread.Summarize(values).Value?.Skewness ?? 0;
        if (Math.Abs(skewness) < LeastSkewness)
        {
            return new(skewness, 1, 1);
        }

        double n = values.Length;
        var q = StudentT.Quantile((1 + confidenceLevel) / 2, n - 1);
        double Inverse(double x) =>
            3 / skewness * (Math.Cbrt(1 + (skewness * (x - (skewness / (6 * n))))) - 1);
        double Factor(double end) => Math.Max(1, Math.Sqrt(n) * Inverse(end / Math.Sqrt(n)) / end);
        return new(skewness, Factor(q), Factor(-q));
    }
}

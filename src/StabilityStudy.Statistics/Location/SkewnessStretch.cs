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

        return OfMoments(values, Moments.Of(values), confidenceLevel);
    }

    /// <summary>The same of checked values whose moments are known.</summary>
    internal static SkewnessStretch OfMoments(
        ReadOnlySpan<double> values,
        Moments moments,
        double confidenceLevel
    ) =>
        Of(
            moments.Count < 3 || moments.IsConstant ? 0 : Spread.Skewness(values, moments),
            moments.Count,
            confidenceLevel
        );

    /// <summary>Both factors of a stated skewness.</summary>
    internal static SkewnessStretch Of(double skewness, int count, double confidenceLevel)
    {
        var q = StudentT.Quantile((1 + confidenceLevel) / 2, count - 1);
        return new(skewness, Factor(skewness, count, q), Factor(skewness, count, -q));
    }

    /// <summary>The lower end of an interval around a center, lengthened; written so that a factor of 1 leaves it as it is to the last digit.</summary>
    internal double LowerEnd(double center, double lower) =>
        lower - ((Downward - 1) * (center - lower));

    /// <summary>The upper end, likewise.</summary>
    internal double UpperEnd(double center, double upper) =>
        upper + ((Upward - 1) * (upper - center));

    /// <summary>
    /// √n·inv(q/√n)/q. With u = g·(x − g/(6n)) and c = ∛(1 + u), ∛(1 + u) − 1 is u/(c² + c + 1): nothing cancels, and g = 0 gives exactly 1.
    /// </summary>
    private static double Factor(double skewness, double n, double q)
    {
        var moved = 1 - (skewness / (6 * Math.Sqrt(n) * q));
        var root = Math.Cbrt(1 + (skewness * moved * q / Math.Sqrt(n)));
        return Math.Max(1, moved * (3 / ((root * root) + root + 1)));
    }
}

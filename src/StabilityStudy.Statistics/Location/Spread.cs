namespace StabilityStudy.Statistics.Location;

/// <summary>Center, spread and shape of a sample; all but the count and the skewness are in the unit of the values.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="StandardDeviation">Standard deviation with divisor n − 1.</param>
/// <param name="Skewness">Adjusted Fisher–Pearson coefficient G₁, without unit.</param>
/// <param name="Minimum">Smallest value.</param>
/// <param name="Maximum">Largest value.</param>
public sealed record SpreadSummary(
    int Count,
    double Mean,
    double StandardDeviation,
    double Skewness,
    double Minimum,
    double Maximum
);

/// <summary>Standard deviation and skewness.</summary>
/// <remarks>
/// G₁ = n/((n − 1)(n − 2))·Σ((x − mean)/s)³ with s the standard deviation of divisor n − 1.
/// Source: Joanes and Gill (1998), The Statistician 47:183–189, G₁ (cited from memory); they also define g₁ and b₁, which are smaller.
/// </remarks>
public static class Spread
{
    /// <summary>Computes the summary.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to. Ties and zeros are ordinary values.</param>
    /// <returns>
    /// Fewer than three values: <see cref="AssumptionCode.TooFewValues"/>. All values the same, so that the skewness is
    /// not defined: <see cref="AssumptionCode.ZeroSpread"/>.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not a number.</exception>
    public static Estimate<SpreadSummary> Summarize(ReadOnlySpan<double> values)
    {
        Require.Numbers(values, nameof(values));
        if (values.Length < 3)
        {
            return Estimate.Refused<SpreadSummary>(Refusal.TooFewForSkewness);
        }

        var moments = Moments.Of(values);
        return moments.IsConstant
            ? Estimate.Refused<SpreadSummary>(Refusal.SameValuesForSkewness)
            : Estimate.Of(
                new SpreadSummary(
                    moments.Count,
                    moments.Mean,
                    moments.StandardDeviation,
                    Skewness(values, moments),
                    moments.Minimum,
                    moments.Maximum
                )
            );
    }

    /// <summary>G₁ of at least three values that are not all the same, by their moments.</summary>
    internal static double Skewness(ReadOnlySpan<double> values, Moments moments)
    {
        var cubes = 0.0;
        foreach (var value in values)
        {
            var standardized = (value - moments.Mean) / moments.StandardDeviation;
            cubes += standardized * standardized * standardized;
        }

        double n = moments.Count;
        return n / (n - 1) / (n - 2) * cubes;
    }
}

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Agreement;

/// <summary>An interval that holds at least a share of a normal population with a stated confidence: mean ± k·s.</summary>
/// <param name="Count">Number of values n.</param>
/// <param name="Mean">Mean.</param>
/// <param name="StandardDeviation">Standard deviation s, divisor n − 1.</param>
/// <param name="Factor">The exact factor k.</param>
/// <param name="HoweFactor">Howe's approximation of k, shown beside it.</param>
/// <param name="Lower">mean − k·s.</param>
/// <param name="Upper">mean + k·s.</param>
/// <param name="Coverage">Share of the population.</param>
/// <param name="ConfidenceLevel">Confidence.</param>
/// <remarks>
/// Sources and assumptions: <see cref="ToleranceFactor"/>. A description: under one-sided skew the stated confidence is far from true.
/// </remarks>
public sealed record ToleranceInterval(
    int Count,
    double Mean,
    double StandardDeviation,
    double Factor,
    double HoweFactor,
    double Lower,
    double Upper,
    double Coverage,
    double ConfidenceLevel
)
{
    /// <summary>Computes the interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="coverage">Share of the population, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">Strictly between 0 and 1.</param>
    /// <returns>The interval; or too few values (n &lt; 2), too many values (n &gt; 10,000), or zero spread.</returns>
    /// <exception cref="ArgumentException">A value is not a number, or a share is not strictly between 0 and 1.</exception>
    public static Estimate<ToleranceInterval> Compute(
        ReadOnlySpan<double> values,
        double coverage,
        double confidenceLevel
    )
    {
        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(coverage, nameof(coverage));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (values.Length < 2)
        {
            return Estimate.Refused<ToleranceInterval>(Refusal.TooFewForTolerance);
        }

        if (values.Length > LargestSample.Tolerance)
        {
            return Estimate.Refused<ToleranceInterval>(Refusal.TooManyForTolerance);
        }

        var moments = Moments.Of(values);
        if (moments.IsConstant)
        {
            return Estimate.Refused<ToleranceInterval>(Refusal.SameValues);
        }

        var factor = ToleranceFactor.TwoSided(moments.Count, coverage, confidenceLevel);
        var reach = factor * moments.StandardDeviation;
        return Estimate.Of(
            new ToleranceInterval(
                moments.Count,
                moments.Mean,
                moments.StandardDeviation,
                factor,
                ToleranceFactor.Howe(moments.Count, coverage, confidenceLevel),
                moments.Mean - reach,
                moments.Mean + reach,
                coverage,
                confidenceLevel
            )
        );
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Whether the change depends on the level: 100·ln(y/x) on the logarithm to base 2 of the geometric mean √(xy), by ordinary least squares, so that the
/// slope is the change in percent, to first order, for each doubling of the level. A mean over the range can hide such a change.
/// </summary>
/// <remarks>
/// Change against the baseline alone finds a dependence where there is none, for the error of the baseline stands in both (regression to the mean; in simulations with a narrow group in half of the
/// studies). With the mean of both logarithms the errors of x and y cancel where their relative sizes are alike (Oldham, J Chronic Dis 15 (1962) 969–977;
/// Bland and Altman, The Lancet 346 (1995) 1085–1087; from memory).
/// Assumptions: independent pairs, a relation straight in the logarithms, normal residuals of one spread. Smallest n: 3.
/// </remarks>
public static class LevelDependence
{
    /// <summary>Doublings; levels closer than this differ by the rounding of their logarithms alone.</summary>
    private const double SmallestRange = 1e-12;

    /// <summary>Computes the line.</summary>
    /// <param name="x">First members of the pairs, above zero.</param>
    /// <param name="y">Second members, above zero, same unit and length.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The line, its slope in percent a doubling; or a value that is not above zero, too few values, or a constant level.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the level is not between 0 and 1.</exception>
    public static Estimate<LineFit> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double confidenceLevel
    )
    {
        PairedValues.Require(x, y);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        var levels = new double[x.Length];
        var changes = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            if (x[i] <= 0 || y[i] <= 0)
            {
                return Estimate.Refused<LineFit>(Refusal.NotPositiveForLogarithm);
            }

            levels[i] = (Math.Log2(x[i]) + Math.Log2(y[i])) / 2;
            changes[i] = 100 * (Math.Log(y[i]) - Math.Log(x[i]));
        }

        if (levels.Length > 0 && levels.Max() - levels.Min() < SmallestRange)
        {
            Array.Fill(levels, levels[0]);
        }

        return OrdinaryLeastSquares.Fit(levels, changes, confidenceLevel);
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Ordinary least squares: the line with the least sum of squared vertical distances. It presumes that x is free of error,
/// which a measured baseline is not: its slope is biased toward zero, the more so the narrower the range. It stands
/// beside the errors-in-variables fits, not in their place.
/// </summary>
public static class OrdinaryLeastSquares
{
    private const int FewestPairs = 3;

    /// <summary>
    /// b = Sxy/Sxx, a = ȳ − b·x̄, s² = Σ(y − a − bx)²/(n − 2), SE(b) = s/√Sxx, SE(a) = s·√(1/n + x̄²/Sxx), intervals with t on
    /// n − 2 degrees of freedom (Draper and Smith, Applied Regression Analysis, 3rd ed. 1998, chapter 1; from memory).
    /// Checked against the certified values of the NIST data set Norris.
    /// Assumes independent normal errors of one size in y and none in x. Ties and zeros need no treatment. Smallest n: 3.
    /// Sums are taken in two passes; NIST data agree to 11 digits or more.
    /// </summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same length.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The line, or too few values, or a constant baseline.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the level is not between 0 and 1.</exception>
    public static Estimate<LineFit> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double confidenceLevel
    )
    {
        PairedValues.Require(x, y);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (PairedValues.WhyNoLine(x, FewestPairs, Refusal.TooFewForLine) is { } reason)
        {
            return Estimate.Refused<LineFit>(reason);
        }

        var n = x.Length;
        var sums = CenteredSums.Of(x, y);
        var slope = sums.Sxy / sums.Sxx;
        var line = new Line(sums.MeanY - (slope * sums.MeanX), slope);
        var residual = line.ResidualStandardDeviation(x, y);
        var t = StudentT.Quantile((1 + confidenceLevel) / 2, n - 2);
        var slopeError = residual / Math.Sqrt(sums.Sxx);
        var interceptError = residual * Math.Sqrt((1.0 / n) + (sums.MeanX * sums.MeanX / sums.Sxx));
        return Estimate.Of(
            new LineFit(
                n,
                CoefficientInterval.Of(line.Intercept, interceptError, t),
                CoefficientInterval.Of(line.Slope, slopeError, t),
                residual,
                confidenceLevel,
                n - 2
            )
        );
    }

    /// <summary>
    /// The predicted change a + (b − 1)·level with SE = s·√(1/n + (level − x̄)²/Sxx); assumptions and refusals as in <see cref="Fit"/>.
    /// </summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="level">Baseline level, in the unit of the data, above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The bias with its interval, or why there is none.</returns>
    /// <exception cref="ArgumentException">As in <see cref="Fit"/>, or the level is not a finite number above zero.</exception>
    public static Estimate<BiasAtLevel> BiasAt(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double level,
        double confidenceLevel
    )
    {
        BiasAtLevel.RequireLevel(level);
        var fitted = Fit(x, y, confidenceLevel);
        if (!fitted.TryGet(out var fit))
        {
            return fitted.RefusedAs<BiasAtLevel>();
        }

        var sums = CenteredSums.Of(x, y);
        var away = level - sums.MeanX;
        var error =
            fit.ResidualStandardDeviation * Math.Sqrt((1.0 / x.Length) + (away * away / sums.Sxx));
        var delayed = fit.Intercept.Value + (fit.Slope.Value * level);
        var half = error * StudentT.Quantile((1 + confidenceLevel) / 2, fit.DegreesOfFreedom);
        var bias = delayed - level;
        return Estimate.Of(
            new BiasAtLevel(
                level,
                delayed,
                bias,
                100 * bias / level,
                error,
                bias - half,
                bias + half,
                confidenceLevel
            )
        );
    }

    /// <summary>Σxy/Σx²; absent when Σx² is zero.</summary>
    public static double? SlopeThroughOrigin(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double squares = 0;
        double products = 0;
        for (var i = 0; i < x.Length; i++)
        {
            squares += x[i] * x[i];
            products += x[i] * y[i];
        }

        return squares > 0 ? products / squares : null;
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Weighted least squares: the line with the least weighted sum of squared vertical distances, for an error of y that changes with the level. Like ordinary least squares it presumes
/// that x is free of error, which a measured baseline is not: a comparison only.
/// </summary>
public static class WeightedLeastSquares
{
    private const int FewestPairs = 3;

    /// <summary>
    /// With weighted means and centered sums: b = Sxy/Sxx, a = ȳ − b·x̄, s² = Σw(y − a − bx)²/(n − 2), SE(b) = s/√Sxx, SE(a) = s·√(1/Σw + x̄²/Sxx), intervals with t on n − 2 degrees of
    /// freedom (Draper and Smith, Applied Regression Analysis, 3rd ed. 1998, chapter 9; from memory). Weights are known up to a common factor, which changes only s; 1/x² stands for an error in
    /// proportion to the level. Assumes independent normal errors of y with variance σ²/w. Ties and zeros need no treatment. Smallest n: 3.
    /// </summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same length.</param>
    /// <param name="weights">One weight above zero for each pair, in the reciprocal square of a unit of the caller's choice.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The line, its residual standard deviation in units of 1/√weight; or too few values, or a constant baseline.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, a weight is not above zero, or the level is not between 0 and 1.</exception>
    public static Estimate<LineFit> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> weights,
        double confidenceLevel
    )
    {
        PairedValues.Require(x, y);
        RequireWeights(weights, x.Length);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (PairedValues.WhyNoLine(x, FewestPairs, Refusal.TooFewForLine) is { } reason)
        {
            return Estimate.Refused<LineFit>(reason);
        }

        var n = x.Length;
        var sums = CenteredSums.Of(x, y, weights);
        var slope = sums.Sxy / sums.Sxx;
        var line = new Line(sums.MeanY - (slope * sums.MeanX), slope);
        var total = 0.0;
        var squares = 0.0;
        for (var i = 0; i < n; i++)
        {
            var residual = line.Residual(x[i], y[i]);
            total += weights[i];
            squares += weights[i] * residual * residual;
        }

        var deviation = Math.Sqrt(squares / (n - 2));
        var t = StudentT.Quantile((1 + confidenceLevel) / 2, n - 2);
        var interceptError =
            deviation * Math.Sqrt((1 / total) + (sums.MeanX * sums.MeanX / sums.Sxx));
        return Estimate.Of(
            new LineFit(
                n,
                CoefficientInterval.Of(line.Intercept, interceptError, t),
                CoefficientInterval.Of(line.Slope, deviation / Math.Sqrt(sums.Sxx), t),
                deviation,
                confidenceLevel,
                n - 2
            )
        );
    }

    private static void RequireWeights(ReadOnlySpan<double> weights, int count)
    {
        if (weights.Length != count)
        {
            throw new ArgumentException("Each pair needs one weight.", nameof(weights));
        }

        Require.Numbers(weights, nameof(weights));
        foreach (var weight in weights)
        {
            if (weight <= 0)
            {
                throw new ArgumentException("A weight is above zero.", nameof(weights));
            }
        }
    }
}

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Deming regression: a straight line when both members of a pair carry error of constant size. The line minimizes
/// Σ((x − X̂)²/λ + (y − a − bX̂)²) with λ = Var(error of x)/Var(error of y), a ratio stated beforehand, not estimated.
/// </summary>
public static class DemingRegression
{
    /// <summary>
    /// b = [(λSyy − Sxx) + √((Sxx − λSyy)² + 4λSxy²)]/(2λSxy), a = ȳ − b·x̄ (Deming, Statistical Adjustment of Data, 1943; in this notation Linnet,
    /// Clin Chem 39 (1993) 424–432; both from memory). Standard errors are jackknifed, intervals centered on the estimate from all pairs, t on n − 2
    /// degrees of freedom. Assumes independent pairs, errors of constant size in both members in the stated ratio, and a
    /// straight relation. Ties and zeros need no treatment. Smallest n: 3. A slope of either sign is possible.
    /// </summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="errorVarianceRatio">λ, the error variance of x divided by that of y; above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>The line; or too few values, too many values (above 5,000), a constant baseline or a vertical line, also when one of these arises with a pair left out.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, the ratio is not above zero, or the level is not between 0 and 1.</exception>
    public static Estimate<LineFit> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double confidenceLevel
    )
    {
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        var fit = Jackknifed(x, y, errorVarianceRatio);
        return fit.TryGet(out var lines)
            ? lines.ToFit(lines.Full.ResidualStandardDeviation(x, y), confidenceLevel)
            : fit.RefusedAs<LineFit>();
    }

    /// <summary>The predicted change a + (b − 1)·level, jackknifed itself; method, assumptions and refusals as in <see cref="Fit"/>.</summary>
    /// <param name="x">First members of the pairs, in the unit of the data.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <param name="errorVarianceRatio">λ, the error variance of x divided by that of y; above zero.</param>
    /// <param name="level">Baseline level, in the unit of the data, above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <param name="clusterings">
    /// The ways in which pairs share an error (collection day, run): the interval is the widest of the one from leaving out pairs and those from leaving out clusters (k − 1 degrees of freedom). May be empty.
    /// </param>
    /// <returns>The bias with its interval, or why there is none.</returns>
    /// <exception cref="ArgumentException">As in <see cref="Fit"/>, the level is not a finite number above zero, or a clustering has not as many clusters as there are pairs.</exception>
    public static Estimate<BiasAtLevel> BiasAt(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double level,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    )
    {
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        BiasAtLevel.RequireLevel(level);
        var byPair = Jackknifed(x, y, errorVarianceRatio);
        var byCluster = JackknifedLine.FitByClusters(
            x,
            y,
            clusterings,
            byPair,
            (xs, ys) => FitLine(xs, ys, errorVarianceRatio),
            LeftOut(errorVarianceRatio)
        );
        return BiasAtLevel.Of(byPair, byCluster, level, confidenceLevel);
    }

    /// <summary>The line alone, without standard errors.</summary>
    internal static Estimate<Line> FitLine(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio
    ) =>
        PairedValues.AreConstant(x)
            ? Estimate.Refused<Line>(Refusal.SameBaselines)
            : FromSums(CenteredSums.Of(x, y), errorVarianceRatio);

    /// <summary>Relative to its bound √(Sxx·Syy), a sum of products that is no more than this is rounding.</summary>
    private const double Rounding = 1e-14;

    /// <summary>
    /// The slope from centered sums. Where λSyy &lt; Sxx the printed formula subtracts nearly equal numbers; its numerator and
    /// denominator are then multiplied by √(…) + Sxx − λSyy, which gives 2Sxy/(√(…) + Sxx − λSyy) without loss.
    /// </summary>
    internal static Estimate<Line> FromSums(CenteredSums sums, double errorVarianceRatio)
    {
        var difference = (errorVarianceRatio * sums.Syy) - sums.Sxx;
        var root = double.Hypot(difference, 2 * Math.Sqrt(errorVarianceRatio) * sums.Sxy);
        if (difference >= 0 && Math.Abs(sums.Sxy) <= Rounding * Math.Sqrt(sums.Sxx * sums.Syy))
        {
            return Estimate.Refused<Line>(Refusal.NoDirection);
        }

        var slope =
            difference >= 0
                ? (difference + root) / (2 * errorVarianceRatio * sums.Sxy)
                : 2 * sums.Sxy / (root - difference);
        return Estimate.Of(new Line(sums.MeanY - (slope * sums.MeanX), slope));
    }

    private static Estimate<JackknifedLine> Jackknifed(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio
    )
    {
        PairedValues.Require(x, y);
        PairedValues.RequireErrorVarianceRatio(errorVarianceRatio);
        return JackknifedLine.Fit(
            x,
            y,
            (xs, ys) => FitLine(xs, ys, errorVarianceRatio),
            LeftOut(errorVarianceRatio)
        );
    }

    private static LeftOutEstimator LeftOut(double errorVarianceRatio) =>
        (line, x, y) =>
        {
            var all = new LeftOutSums(line, x, y, errorVarianceRatio, isWeighted: false);
            return left =>
                all.Without(line, left) is { } sums
                    ? FromSums(sums, errorVarianceRatio).Value
                    : null;
        };
}

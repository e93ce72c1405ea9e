using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Weighted Deming regression: a straight line when both members of a pair carry error in proportion to the level, with
/// λ = Var(error of x)/Var(error of y) stated beforehand.
/// </summary>
public static class WeightedDemingRegression
{
    /// <summary>
    /// Two rounds whose intercepts, and slopes times the mean of x, differ by less than this share of the mean of y are taken as the fixed point. One round
    /// shrinks the distance by about the squared coefficient of variation, so what remains is far below; a smaller
    /// tolerance would come near the rounding of the sums.
    /// </summary>
    private const double RelativeTolerance = 1e-11;

    /// <summary>Usual data settle within ten rounds; data that need more than this have no useful fixed point.</summary>
    private const int MostRounds = 500;

    /// <summary>Weights of so many pairs, 4 kB, are kept on the stack.</summary>
    private const int OnStack = 512;

    /// <summary>
    /// The formula of Deming regression with weighted means and sums, weights w = 1/((X̂ + λŶ)/(1 + λ))². The first round takes the measured values for
    /// X̂ and Ŷ; later rounds take the estimated true values X̂ = x + λbd/(1 + λb²), Ŷ = y − d/(1 + λb²), d = y − a − bx, until the line settles
    /// (Linnet, Stat Med 9 (1990) 1463–1473, and Clin Chem 39 (1993) 424–432; from memory). Standard errors are jackknifed, each fit
    /// with a pair left out iterated from the start; intervals centered on the estimate from all pairs, t on n − 2 degrees of
    /// freedom. Assumes independent pairs, errors proportional to the level, values above zero, a straight relation. Ties
    /// need no treatment. Smallest n: 3; largest 5,000.
    /// </summary>
    /// <param name="x">First members of the pairs, in the unit of the data, above zero.</param>
    /// <param name="y">Second members, same unit and length, above zero.</param>
    /// <param name="errorVarianceRatio">λ, the error variance of x divided by that of y; above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>
    /// The line; or too few values, too many values, a value not above zero (measured, or estimated during the iteration), a constant baseline, a
    /// vertical line or no convergence, also when one of these arises with a pair left out.
    /// </returns>
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
            ? lines.ToFit(
                RelativeResidualStandardDeviation(x, y, lines.Full, errorVarianceRatio),
                confidenceLevel
            )
            : fit.RefusedAs<LineFit>();
    }

    /// <summary>The predicted change a + (b − 1)·level at several levels, jackknifed itself; method, assumptions and refusals as in <see cref="Fit"/>.</summary>
    /// <param name="x">First members of the pairs, in the unit of the data, above zero.</param>
    /// <param name="y">Second members, same unit and length, above zero.</param>
    /// <param name="errorVarianceRatio">λ, the error variance of x divided by that of y; above zero.</param>
    /// <param name="levels">Baseline levels, in the unit of the data, above zero.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <param name="clusterings">
    /// The ways in which pairs share an error (collection day, run): the interval is the widest of the one from leaving out pairs and those from leaving out clusters (k − 1 degrees of freedom). May be empty.
    /// </param>
    /// <returns>The bias at each level with its interval, or why there is none.</returns>
    /// <exception cref="ArgumentException">As in <see cref="Fit"/>, a level is not a finite number above zero, or a clustering has not as many clusters as there are pairs.</exception>
    public static ImmutableArray<Estimate<BiasAtLevel>> BiasesAt(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        ImmutableArray<double> levels,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    )
    {
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        BiasAtLevel.RequireLevels(levels);
        var byPair = Jackknifed(x, y, errorVarianceRatio);
        var byCluster = JackknifedLine.FitByClusters(
            x,
            y,
            clusterings,
            byPair,
            (xs, ys) => FitLine(xs, ys, errorVarianceRatio),
            LeftOut(errorVarianceRatio)
        );
        return
        [
            .. levels.Select(level => BiasAtLevel.Of(byPair, byCluster, level, confidenceLevel)),
        ];
    }

    /// <summary>The same at one level.</summary>
    /// <inheritdoc cref="BiasesAt"/>
    /// <param name="level">Baseline level, in the unit of the data, above zero.</param>
    public static Estimate<BiasAtLevel> BiasAt(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        double level,
        double confidenceLevel,
        ImmutableArray<Clustering> clusterings
    ) => BiasesAt(x, y, errorVarianceRatio, [level], confidenceLevel, clusterings)[0];

    /// <summary>The predicted changes a + (b − 1)·level alone, around which every interval of <see cref="BiasesAt"/> lies; empty where there is no line.</summary>
    /// <inheritdoc cref="BiasesAt"/>
    public static ImmutableArray<double> PredictedBiases(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio,
        ImmutableArray<double> levels
    )
    {
        PairedValues.Require(x, y);
        PairedValues.RequireErrorVarianceRatio(errorVarianceRatio);
        BiasAtLevel.RequireLevels(levels);
        return
            !HasValueNotPositive(x)
            && !HasValueNotPositive(y)
            && FitLine(x, y, errorVarianceRatio).TryGet(out var line)
            ? [.. levels.Select(level => line.Intercept + ((line.Slope - 1) * level))]
            : [];
    }

    /// <summary>The line alone, without standard errors.</summary>
    internal static Estimate<Line> FitLine(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio
    )
    {
        if (PairedValues.AreConstant(x))
        {
            return Estimate.Refused<Line>(Refusal.SameBaselines);
        }

        // One room for the weights of all rounds: a fit has many, and a jackknife many fits.
        Span<double> weights =
            x.Length <= OnStack ? stackalloc double[x.Length] : new double[x.Length];
        Line? previous = null;
        for (var round = 0; round < MostRounds; round++)
        {
            var areWeights = previous is null
                ? ProportionalWeights.TryMeasured(x, y, errorVarianceRatio, weights)
                : ProportionalWeights.TryAround(previous, x, y, errorVarianceRatio, weights);
            if (!areWeights)
            {
                return LevelNotPositive();
            }

            var sums = CenteredSums.Of(x, y, weights);
            var answer = DemingRegression.FromSums(sums, errorVarianceRatio);
            if (!answer.TryGet(out var line))
            {
                return answer;
            }

            if (previous is not null && HasSettled(previous, line, sums))
            {
                return ProportionalWeights.TryAround(line, x, y, errorVarianceRatio, weights)
                    ? answer
                    : LevelNotPositive();
            }

            previous = line;
        }

        return Estimate.Refused<Line>(Refusal.WeightsDidNotSettle);
    }

    private static Estimate<Line> LevelNotPositive() =>
        Estimate.Refused<Line>(Refusal.NotPositiveForLevelWeights);

    private static bool HasSettled(Line previous, Line line, CenteredSums sums) =>
        Math.Abs(line.Slope - previous.Slope) * sums.MeanX <= RelativeTolerance * sums.MeanY
        && Math.Abs(line.Intercept - previous.Intercept) <= RelativeTolerance * sums.MeanY;

    private static double RelativeResidualStandardDeviation(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        Line line,
        double errorVarianceRatio
    )
    {
        var weights = new double[x.Length];
        if (!ProportionalWeights.TryAround(line, x, y, errorVarianceRatio, weights))
        {
            throw new InvalidOperationException("A settled line has levels above zero.");
        }

        double sum = 0;
        for (var i = 0; i < x.Length; i++)
        {
            sum += weights[i] * Math.Pow(line.Residual(x[i], y[i]), 2);
        }

        return Math.Sqrt(sum / (x.Length - 2));
    }

    private static Estimate<JackknifedLine> Jackknifed(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double errorVarianceRatio
    )
    {
        PairedValues.Require(x, y);
        PairedValues.RequireErrorVarianceRatio(errorVarianceRatio);
        if (HasValueNotPositive(x) || HasValueNotPositive(y))
        {
            return Estimate.Refused<JackknifedLine>(Refusal.NotPositiveForWeights);
        }

        return JackknifedLine.Fit(
            x,
            y,
            (xs, ys) => FitLine(xs, ys, errorVarianceRatio),
            LeftOut(errorVarianceRatio)
        );
    }

    /// <summary>The same rounds on the sums of all pairs, from their line on.</summary>
    private static LeftOutEstimator LeftOut(double errorVarianceRatio) =>
        (line, x, y) =>
        {
            var all = new LeftOutSums(line, x, y, errorVarianceRatio, isWeighted: true);
            return left =>
            {
                var previous = line;
                for (var round = 0; round < MostRounds; round++)
                {
                    if (
                        all.Without(previous, left) is not { } sums
                        || DemingRegression.FromSums(sums, errorVarianceRatio).Value is not { } next
                    )
                    {
                        return null;
                    }

                    if (HasSettled(previous, next, sums))
                    {
                        return next;
                    }

                    previous = next;
                }

                return null;
            };
        };

    private static bool HasValueNotPositive(ReadOnlySpan<double> values)
    {
        foreach (var value in values)
        {
            if (value <= 0)
            {
                return true;
            }
        }

        return false;
    }
}

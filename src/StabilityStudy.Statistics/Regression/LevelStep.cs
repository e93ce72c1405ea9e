namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The change at a level on either side of it: D = 100·ln(y/x) on L = 100·(ln x + ln y)/2 and on a step at the level, by least squares within clusters that share an error. A straight line passes over a change that sets in at some level; with the step
/// each side answers for itself, with the slope in common.
/// </summary>
/// <param name="Level">The level, in the unit of the data.</param>
/// <param name="Below">The change there as the pairs below it have it.</param>
/// <param name="Above">The change there as the pairs at or above it have it.</param>
/// <param name="DegreesOfFreedom">n − clusters − 2, or n − 3 where every pair has a cluster of its own.</param>
/// <remarks>
/// A pair lies at or above the level when its first member does. An error of x moves the two sides apart, which can only cost a claim. D, L and the step are centered within clusters, so that what a run adds to its results moves neither side.
/// Assumptions: pairs independent within clusters, residuals of one spread. Smallest n: clusters + 3. Source: Draper and Smith, Applied Regression Analysis, 3rd ed. 1998, chapter 14 on dummy variables (from memory); that both sides must agree is our own rule.
/// </remarks>
public sealed record LevelStep(
    double Level,
    LevelSide Below,
    LevelSide Above,
    double DegreesOfFreedom
)
{
    /// <summary>A step that other clusters or the slope explain as well cannot be told from them.</summary>
    private const double SmallestDeterminant = 1e-10;

    /// <summary>Fits the line with the step.</summary>
    /// <param name="x">First members of the pairs, above zero.</param>
    /// <param name="y">Second members, above zero, same unit and length.</param>
    /// <param name="cluster">Which pairs share an error, a number for each pair.</param>
    /// <param name="level">A level above zero, in the unit of the data.</param>
    /// <returns>Both sides; or a value that is not above zero, too few pairs, or pairs of which neither slope nor clusters can be told from the step.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or the level is not a finite number above zero.</exception>
    public static Estimate<LevelStep> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ImmutableArray<int> cluster,
        double level
    )
    {
        BiasAtLevel.RequireLevel(level);
        var within = ChangesWithin.Clusters(x, y, cluster, parameters: 2);
        if (!within.TryGet(out var pairs))
        {
            return within.RefusedAs<LevelStep>();
        }

        var isAbove = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            isAbove[i] = x[i] >= level ? 1 : 0;
        }

        var (u, v, d) = (
            pairs.Centered(pairs.Levels),
            pairs.Centered(isAbove),
            pairs.Centered(pairs.Changes)
        );
        var (uu, uv, vv) = (Product(u, u), Product(u, v), Product(v, v));
        var determinant = (uu * vv) - (uv * uv);
        if (determinant <= SmallestDeterminant * uu * vv)
        {
            return Estimate.Refused<LevelStep>(Refusal.SidesNotSeparate);
        }

        var (ud, vd) = (Product(u, d), Product(v, d));
        var slope = ((vv * ud) - (uv * vd)) / determinant;
        var step = ((uu * vd) - (uv * ud)) / determinant;
        var residuals = d.Select((value, i) => value - (slope * u[i]) - (step * v[i])).ToArray();
        var variance = Product(residuals, residuals) / pairs.DegreesOfFreedom;
        var along = (100 * Math.Log(level)) - pairs.Levels.Average();
        LevelSide Side(double indicator)
        {
            var across = indicator - isAbove.Average();
            return new(
                (slope * along) + (step * across),
                Math.Sqrt(
                    variance
                        * (
                            (along * along * vv)
                            - (2 * along * across * uv)
                            + (across * across * uu)
                        )
                        / determinant
                )
            );
        }

        return Estimate.Of(new LevelStep(level, Side(0), Side(1), pairs.DegreesOfFreedom));
    }

    private static double Product(double[] first, double[] second) =>
        first.Zip(second, (a, b) => a * b).Sum();
}

/// <summary>The change on one side of a level.</summary>
/// <param name="BeyondMean">By how much it differs from the mean of D, in percent on the log scale.</param>
/// <param name="StandardError">Standard error of that difference.</param>
public sealed record LevelSide(double BeyondMean, double StandardError);

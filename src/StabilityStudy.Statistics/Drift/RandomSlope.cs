using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Drift;

/// <summary>
/// Drift by a mixed model: every specimen has a level and a slope of its own, and the mean slope is estimated by restricted maximum
/// likelihood (REML). Beside the mean of specimen slopes, which weighs all specimens alike, it weighs a specimen by what its results can tell.
/// </summary>
/// <remarks>
/// y = (β₀ + a) + (β₁ + b)·g + e, (a, b) normal between specimens with any covariance, e normal with one variance; g = f(t) at the actual delay
/// (<see cref="SpecimenSlopes.Transform"/>). Source: Laird and Ware, Biometrics 38 (1982) 963–974; REML by Patterson and Thompson,
/// Biometrika 58 (1971) 545–554; corrected information criterion by Hurvich and Tsai, Biometrika 76 (1989) 297–307 (all from memory; checked
/// against nlme of R). Bounds: t with m − 1 degrees of freedom, m the specimens with results at two delays or more, since a normal quantile gives false claims in 7 of 100 instead of 5 at common sizes; exact for a
/// complete design with a fit inside the boundary, where the estimate is the mean of the specimens' own least-squares slopes with their SD/√m.
/// Days and runs are not in the model; where clusterings are given, the bounds also span the clustered intervals of what each specimen contributes to the slope.
/// </remarks>
public static class RandomSlope
{
    private const int FewestSpecimens = 3;

    private const int FewestDelaysOfSlope = 2;

    /// <summary>A line through two delays leaves no scatter about it.</summary>
    private const int FewestDelaysOfOne = 3;
    private const int MostParameters = 6;

    /// <summary>Relative to the variance of a result: below it a variance is zero for what the results can tell.</summary>
    private const double Zero = 1e-10;

    /// <summary>Fits the model.</summary>
    /// <param name="specimens">The results of each specimen, baseline included, in any order; delays may differ and results may be missing.</param>
    /// <param name="oneSidedConfidence">Level of each bound of the mean slope, between 0.5 and 1.</param>
    /// <param name="clusterings">The ways in which specimens share an error, one cluster a specimen; the bounds are those of the model alone without any.</param>
    /// <returns>
    /// The fit; or too few values (fewer than three specimens with results at two delays, or none at three, without which the scatter of slopes
    /// and of results cannot be told apart), zero spread about the lines, or no convergence.
    /// </returns>
    /// <exception cref="ArgumentException">Numbers of g and results differ, a value is not finite, or the level is not between 0.5 and 1.</exception>
    public static Estimate<RandomSlopeFit> Fit(
        ImmutableArray<SpecimenResponses> specimens,
        double oneSidedConfidence,
        ImmutableArray<Clustering> clusterings = default
    )
    {
        RequireArguments(specimens, oneSidedConfidence);
        var shared = clusterings.IsDefault ? [] : clusterings;
        if (shared.Any(item => item.Cluster.Length != specimens.Length))
        {
            throw new ArgumentException("Each specimen needs one cluster.", nameof(clusterings));
        }

        var indices = Enumerable
            .Range(0, specimens.Length)
            .Where(i => !specimens[i].Growth.IsEmpty)
            .ToImmutableArray();
        ImmutableArray<SpecimenResponses> kept = [.. indices.Select(i => specimens[i])];
        var withSlope = kept.Count(item => item.HasDelays(FewestDelaysOfSlope));
        if (withSlope < FewestSpecimens || !kept.Any(item => item.HasDelays(FewestDelaysOfOne)))
        {
            return Estimate.Refused<RandomSlopeFit>(Refusal.TooFewForMixedModel);
        }

        var (scale, center) = Scaling(kept);
        ImmutableArray<SpecimenSums> sums =
        [
            .. kept.Select(item => SpecimenSums.Of(item, scale, center)),
        ];
        if (Start(kept, sums) is not { } start)
        {
            return Estimate.Refused<RandomSlopeFit>(Refusal.NoScatterAboutLines);
        }

        var likelihood = new VarianceLikelihood(sums, isRestricted: true);
        var restricted = VarianceSearch.Find(likelihood, start);
        var full = VarianceSearch.Find(
            new VarianceLikelihood(sums, isRestricted: false),
            StartOfFull(restricted, start)
        );
        if (restricted is null || full is null)
        {
            return Estimate.Refused<RandomSlopeFit>(Refusal.VariancesDidNotSettle);
        }

        var fit = Result(
            sums,
            restricted,
            full.Point.Deviance,
            scale,
            center,
            withSlope - 1,
            oneSidedConfidence
        );
        return Estimate.Of(
            shared.IsEmpty
                ? fit
                : Spanning(
                    fit,
                    likelihood.SlopeContributions(restricted),
                    scale,
                    kept.Length == specimens.Length
                        ? shared
                        :
                        [
                            .. shared.Select(item =>
                                item.With([.. indices.Select(i => item.Cluster[i])])
                            ),
                        ]
                )
        );
    }

    /// <summary>
    /// The bounds widened by what days and runs share. With hᵢ what specimen i contributes to the slope, Σh = 0, slope + n·hᵢ stands for a slope of its own, as it is one in a complete design;
    /// its clustered interval is the rule of the mean of specimen slopes (<see cref="ClusteredMean"/>).
    /// </summary>
    private static RandomSlopeFit Spanning(
        RandomSlopeFit fit,
        ImmutableArray<double> contributions,
        double scale,
        ImmutableArray<Clustering> clusterings
    ) =>
        ClusteredMean
            .WithInterval(
                [.. contributions.Select(h => fit.Slope + (contributions.Length * h / scale))],
                clusterings,
                (2 * fit.OneSidedConfidence) - 1
            )
            .TryGet(out var mean)
            ? fit with
            {
                SlopeLower = Math.Min(fit.SlopeLower, mean.Lower),
                SlopeUpper = Math.Max(fit.SlopeUpper, mean.Upper),
            }
            : fit;

    /// <summary>The unit of g, a common one, and where results are counted from, so that sums of squares keep their digits.</summary>
    private static (double Scale, double Center) Scaling(
        ImmutableArray<SpecimenResponses> specimens
    )
    {
        var (squares, sum, count) = (0.0, 0.0, 0L);
        foreach (var specimen in specimens)
        {
            foreach (var g in specimen.Growth)
            {
                squares += g * g;
            }

            foreach (var response in specimen.Response)
            {
                sum += response;
            }

            count += specimen.Growth.Length;
        }

        return (Math.Sqrt(squares / count), sum / count);
    }

    private static RandomSlopeFit Result(
        ImmutableArray<SpecimenSums> sums,
        VarianceMinimum restricted,
        double fullDeviance,
        double scale,
        double center,
        int degrees,
        double oneSidedConfidence
    )
    {
        var (relative, point) = (restricted.Relative, restricted.Point);
        var results = sums.Sum(item => item.Count);
        var slope = point.Line.Second / scale;
        var error = Math.Sqrt(point.ResidualVariance * point.Information.Inverted().D) / scale;
        var reach = StudentT.Quantile(oneSidedConfidence, degrees) * error;
        var boundary = BoundaryOf(relative);
        var noIntercept = relative.A <= Zero;
        var noSlope = relative.D <= Zero;
        return new RandomSlopeFit(
            sums.Length,
            results,
            point.Line.First + center,
            slope,
            error,
            slope - reach,
            slope + reach,
            oneSidedConfidence,
            degrees,
            noIntercept ? 0 : point.ResidualVariance * relative.A,
            noSlope ? 0 : point.ResidualVariance * relative.D / (scale * scale),
            noIntercept || noSlope ? null
                : boundary == VarianceBoundary.FullCorrelation ? Math.Sign(relative.B)
                : relative.B / Math.Sqrt(relative.A * relative.D),
            point.ResidualVariance,
            boundary,
            // The information matrix in units of g itself.
            (-point.Deviance / 2) - Math.Log(scale),
            results > MostParameters + 1
                ? fullDeviance
                    + (2 * MostParameters)
                    + (2.0 * MostParameters * (MostParameters + 1) / (results - MostParameters - 1))
                : null
        );
    }

    private static VarianceBoundary BoundaryOf(SymmetricMatrix relative) =>
        relative.D <= Zero ? VarianceBoundary.NoSlopeVariance
        : relative.A <= Zero ? VarianceBoundary.NoInterceptVariance
        : relative.Determinant <= Zero * relative.A * relative.D ? VarianceBoundary.FullCorrelation
        : VarianceBoundary.None;

    /// <summary>The minima of both likelihoods lie close to each other, unless one lies on the boundary, from which no step leads away.</summary>
    private static SymmetricMatrix StartOfFull(
        VarianceMinimum? restricted,
        SymmetricMatrix start
    ) =>
        restricted is { Relative: var relative } && BoundaryOf(relative) == VarianceBoundary.None
            ? relative
            : start;

    /// <summary>Scatter of the specimens' own lines, relative to that of results about them; null when there is none about them.</summary>
    private static SymmetricMatrix? Start(
        ImmutableArray<SpecimenResponses> specimens,
        ImmutableArray<SpecimenSums> sums
    )
    {
        var lines = new List<(double First, double Second)>();
        var (squares, degrees) = (0.0, 0);
        for (var i = 0; i < sums.Length; i++)
        {
            if (!specimens[i].HasDelays(FewestDelaysOfSlope))
            {
                continue;
            }

            var line = sums[i].Moments.Inverted().Times(sums[i].Products);
            lines.Add(line);
            squares +=
                sums[i].Squares
                - (sums[i].Products.First * line.First)
                - (sums[i].Products.Second * line.Second);
            degrees += sums[i].Count - 2;
        }

        var total = sums.Sum(item => item.Squares);
        if (squares <= 1e-12 * total)
        {
            return null;
        }

        var mean = (
            First: lines.Average(line => line.First),
            Second: lines.Average(line => line.Second)
        );
        var scatter = lines.Aggregate(
            default(SymmetricMatrix),
            (sum, line) =>
                sum + SymmetricMatrix.Square((line.First - mean.First, line.Second - mean.Second))
        );
        return (degrees / squares / Math.Max(lines.Count - 1, 1)) * scatter;
    }

    private static void RequireArguments(
        ImmutableArray<SpecimenResponses> specimens,
        double oneSidedConfidence
    )
    {
        if (
            specimens.IsDefault
            || specimens.Any(item =>
                item.Growth.Length != item.Response.Length
                || !item.Growth.All(double.IsFinite)
                || !item.Response.All(double.IsFinite)
            )
        )
        {
            throw new ArgumentException(
                "Each result needs one finite value and one finite g.",
                nameof(specimens)
            );
        }

        Require.OneSidedConfidence(oneSidedConfidence, nameof(oneSidedConfidence));
    }
}

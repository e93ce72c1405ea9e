using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Fits one line to pairs; the answer is a line or the reason why there is none.</summary>
internal delegate Estimate<Line> LineEstimator(ReadOnlySpan<double> x, ReadOnlySpan<double> y);

/// <summary>From the line of all pairs to the lines without some of them.</summary>
internal delegate LineWithout LeftOutEstimator(
    Line line,
    ReadOnlySpan<double> x,
    ReadOnlySpan<double> y
);

/// <summary>
/// A line fitted to all pairs and again with each pair left out. Any quantity of the line gets its standard error from the
/// pseudo-values θ*ᵢ = nθ − (n − 1)θ₍ᵢ₎: SE = √(Σ(θ*ᵢ − θ̄*)²/(n(n − 1))) (Tukey 1958; for lines of method comparison Linnet, Stat Med 9
/// (1990) 1463–1473, from memory). The interval is centered on the estimate from all pairs, with t on n − 2 degrees of freedom.
/// With clusters (collection days, runs) whole clusters are left out instead, n is their number D, and t has D − 1.
/// </summary>
internal sealed record JackknifedLine(
    Line Full,
    ImmutableArray<Line> LeaveOneOut,
    int DegreesOfFreedom
)
{
    /// <summary>Two pairs must remain when one is left out, and n − 2 must be above zero.</summary>
    public const int FewestPairs = 3;

    /// <summary>Fits all pairs and every set with one pair left out; with few pairs each fit starts from nothing, with many pairs are left out of the sums of all.</summary>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members.</param>
    /// <param name="estimator">Fits a line.</param>
    /// <param name="leaveOut">From the sums around the line of all pairs to the lines without some of them; null where each is fitted.</param>
    public static Estimate<JackknifedLine> Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        LineEstimator estimator,
        LeftOutEstimator? leaveOut
    )
    {
        if (x.Length < FewestPairs)
        {
            return Estimate.Refused<JackknifedLine>(Refusal.TooFewForJackknife);
        }

        if (x.Length > LargestSample.Jackknife)
        {
            return Estimate.Refused<JackknifedLine>(Refusal.TooManyForJackknife);
        }

        var full = estimator(x, y);
        if (!full.TryGet(out var line))
        {
            return full.RefusedAs<JackknifedLine>();
        }

        var without = x.Length < LeftOutSums.FewestPairs ? null : leaveOut?.Invoke(line, x, y);
        var lines = ImmutableArray.CreateBuilder<Line>(x.Length);
        var remainingX = x[1..].ToArray();
        var remainingY = y[1..].ToArray();
        for (var left = 0; left < x.Length; left++)
        {
            if (left > 0)
            {
                remainingX[left - 1] = x[left - 1];
                remainingY[left - 1] = y[left - 1];
            }

            if (without?.Invoke([left]) is { } reduced)
            {
                lines.Add(reduced);
                continue;
            }

            var partial = estimator(remainingX, remainingY);
            if (!partial.TryGet(out var lineWithout))
            {
                return Refused(partial, new OmittedPairs(left + 1, x.Length));
            }

            lines.Add(lineWithout);
        }

        return Estimate.Of(new JackknifedLine(line, lines.MoveToImmutable(), x.Length - 2));
    }

    /// <summary>Fits all pairs and, for each clustering, every set with one cluster left out: what a run adds to all its results then shows in full.</summary>
    /// <param name="x">First members of the pairs.</param>
    /// <param name="y">Second members.</param>
    /// <param name="clusterings">The ways in which pairs share an error; empty when they are independent.</param>
    /// <param name="byPair">The line of all pairs, with each left out.</param>
    /// <param name="estimator">Fits a line.</param>
    /// <param name="leaveOut">As in <see cref="Fit"/>.</param>
    /// <returns>One for each clustering that tells pairs apart otherwise than those before it; none without a line.</returns>
    /// <exception cref="ArgumentException">A clustering has not as many clusters as there are pairs.</exception>
    public static ImmutableArray<(
        IntervalSource Source,
        Estimate<JackknifedLine> Lines
    )> FitByClusters(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ImmutableArray<Clustering> clusterings,
        Estimate<JackknifedLine> byPair,
        LineEstimator estimator,
        LeftOutEstimator? leaveOut
    )
    {
        var without =
            x.Length >= LeftOutSums.FewestPairs && byPair.TryGet(out var whole)
                ? leaveOut?.Invoke(whole.Full, x, y)
                : null;
        var fits = ImmutableArray.CreateBuilder<(IntervalSource, Estimate<JackknifedLine>)>();
        for (var i = 0; i < clusterings.Length; i++)
        {
            var clustering = clusterings[i];
            if (clustering.Cluster.Length != x.Length)
            {
                throw new ArgumentException("Each pair needs one cluster.", nameof(clusterings));
            }

            var clusters = clustering.Count;
            if (
                byPair.TryGet(out var lineOfAll)
                && clusters > 1
                && clusters < x.Length
                && !clusterings.Take(i).Any(clustering.PartsAs)
            )
            {
                fits.Add(
                    (
                        clustering.Source,
                        FitByCluster(x, y, clustering.Cluster, lineOfAll, estimator, without)
                    )
                );
            }
        }

        return fits.ToImmutable();
    }

    private static Estimate<JackknifedLine> FitByCluster(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ImmutableArray<int> cluster,
        JackknifedLine lineOfAll,
        LineEstimator estimator,
        LineWithout? without
    )
    {
        var clusters = Enumerable
            .Range(0, cluster.Length)
            .GroupBy(pair => cluster[pair])
            .OrderBy(pairs => pairs.Key)
            .ToArray();
        var lines = ImmutableArray.CreateBuilder<Line>(clusters.Length);
        foreach (var pairs in clusters)
        {
            if (without?.Invoke(pairs.ToArray()) is { } reduced)
            {
                lines.Add(reduced);
                continue;
            }

            var left = pairs.Key;
            var partial = estimator(
                Others(x, cluster.AsSpan(), left),
                Others(y, cluster.AsSpan(), left)
            );
            if (!partial.TryGet(out var lineWithout))
            {
                return Refused(partial, new OmittedPairs(null, x.Length));
            }

            lines.Add(lineWithout);
        }

        return Estimate.Of(
            lineOfAll with
            {
                LeaveOneOut = lines.MoveToImmutable(),
                DegreesOfFreedom = clusters.Length - 1,
            }
        );
    }

    private static double[] Others(ReadOnlySpan<double> values, ReadOnlySpan<int> cluster, int left)
    {
        var others = new List<double>(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            if (cluster[i] != left)
            {
                others.Add(values[i]);
            }
        }

        return [.. others];
    }

    /// <summary>The quantity of the line from all pairs, with its jackknife standard error and interval.</summary>
    public CoefficientInterval Interval(Func<Line, double> quantity, double confidenceLevel)
    {
        var n = LeaveOneOut.Length;
        var value = quantity(Full);
        var pseudoValues = new double[n];
        for (var i = 0; i < n; i++)
        {
            pseudoValues[i] = (n * value) - ((n - 1) * quantity(LeaveOneOut[i]));
        }

        var mean = pseudoValues.Sum() / n;
        var squares = pseudoValues.Sum(p => (p - mean) * (p - mean));
        var standardError = Math.Sqrt(squares / n / (n - 1));
        var margin = StudentT.Quantile((1 + confidenceLevel) / 2, DegreesOfFreedom) * standardError;
        return new CoefficientInterval(value, standardError, value - margin, value + margin);
    }

    /// <summary>The line with both intervals.</summary>
    public Estimate<LineFit> ToFit(double residualStandardDeviation, double confidenceLevel) =>
        Estimate.Of(
            new LineFit(
                LeaveOneOut.Length,
                Interval(line => line.Intercept, confidenceLevel),
                Interval(line => line.Slope, confidenceLevel),
                residualStandardDeviation,
                confidenceLevel,
                DegreesOfFreedom
            )
        );

    private static Estimate<JackknifedLine> Refused(Estimate<Line> answer, OmittedPairs omitted) =>
        Estimate.Refused<JackknifedLine>(answer.NotComputable! with { Omitted = omitted });
}

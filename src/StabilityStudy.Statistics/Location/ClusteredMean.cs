namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Arithmetic mean of values that share errors in several ways (collection day, run of the baseline, run of the delayed
/// result, person): the smallest interval that holds the t interval over the values, that over each kind of cluster mean and,
/// where runs cross, the two-way one, each lengthened for skewness.
/// </summary>
/// <remarks>
/// A run's error is the same for all its specimens and does not average out over them; the cluster means carry it in
/// full. Cluster means as the unit of analysis: Donner and Klar (2000), Design and Analysis of Cluster Randomization
/// Trials in Health Research, chapters 6 and 7 (cited from memory).
/// Where a run of one kind meets several of the other, neither clustering alone holds the error of both: V = SE²(first) + SE²(second) − SE²(pairs of runs), with
/// min(k₁, k₂) − 1 degrees of freedom around the mean over the values, where V is above zero. Cameron, Gelbach and Miller (2011), Journal of Business and Economic Statistics 29:238–249 (cited from memory).
/// Skewness: <see cref="SkewnessStretch"/>. Taking the hull of all is our own rule: with few clusters a cluster interval has so few degrees of freedom that it is sometimes narrow by chance, and
/// clusters of different size give the intervals different centers.
/// Assumptions: clusters of one kind are independent of each other; their means are close to normally distributed.
/// </remarks>
public static class ClusteredMean
{
    /// <summary>Computes mean and interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="clusterings">The ways in which values share an error, each of the same length as the values; may be empty.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// Fewer than two values: <see cref="AssumptionCode.TooFewValues"/>. A clustering with one cluster has no interval and gives the
    /// note <see cref="AssumptionCode.OneCluster"/>. All values the same: the note <see cref="AssumptionCode.ZeroSpread"/>.
    /// </returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<ClusteredMeanInterval> WithInterval(
        ReadOnlySpan<double> values,
        ImmutableArray<Clustering> clusterings,
        double confidenceLevel
    )
    {
        var parted = new List<(Clustering Clustering, double[] Means)>();
        foreach (var clustering in clusterings)
        {
            parted.Add((clustering, clustering.MeansOf(values)));
        }

        Require.Numbers(values, nameof(values));
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (values.Length < 2)
        {
            return Estimate.Refused<ClusteredMeanInterval>(Refusal.TooFewForMean);
        }

        var moments = Moments.Of(values);
        var bySpecimen = ArithmeticMean.OfMoments(moments, confidenceLevel);

        // With one value in every cluster both intervals are the same one and only rounding could tell them apart.
        var count = values.Length;
        ImmutableArray<ClusterInterval> byCluster =
        [
            .. parted
                .Where(item => item.Means.Length > 1 && item.Means.Length < count)
                .Select(item =>
                    Interval(
                        item.Clustering.Source,
                        item.Means.Length,
                        Moments.MeanOf(item.Means),
                        StandardErrorOf(item.Means),
                        confidenceLevel
                    )
                ),
        ];
        if (Crossed(parted, values, bySpecimen.Mean, confidenceLevel) is { } crossed)
        {
            byCluster = byCluster.Add(crossed);
        }

        var stretch = SkewnessStretch.OfMoments(values, moments, confidenceLevel);
        var all = byCluster.Insert(
            0,
            new(
                IntervalSource.Specimens,
                bySpecimen.Count,
                bySpecimen.Mean,
                bySpecimen.StandardError,
                bySpecimen.DegreesOfFreedom,
                bySpecimen.Lower,
                bySpecimen.Upper
            )
        );
        var widest = all.MaxBy(item => item.Upper - item.Lower)!;
        return new Estimate<ClusteredMeanInterval>(
            new ClusteredMeanInterval(
                bySpecimen,
                byCluster,
                stretch,
                bySpecimen.Mean,
                confidenceLevel,
                all.Min(item => stretch.LowerEnd(item.Mean, item.Lower)),
                all.Max(item => stretch.UpperEnd(item.Mean, item.Upper)),
                widest.StandardError,
                widest.DegreesOfFreedom,
                widest.Source
            ),
            null,
            parted.Any(item => item.Means.Length == 1)
                ? ArithmeticMean.NotesOf(moments).Add(EstimateNote.OneCluster)
                : ArithmeticMean.NotesOf(moments)
        );
    }

    /// <summary>The two-way interval where a run of one kind meets several of the other; null where none does, or where the variances leave nothing.</summary>
    private static ClusterInterval? Crossed(
        List<(Clustering Clustering, double[] Means)> parted,
        ReadOnlySpan<double> values,
        double mean,
        double confidenceLevel
    )
    {
        var first = parted.Find(item => item.Clustering.Source == IntervalSource.BaselineRuns);
        var second = parted.Find(item => item.Clustering.Source == IntervalSource.DelayedRuns);
        if (first.Means is not { Length: > 1 } || second.Means is not { Length: > 1 })
        {
            return null;
        }

        var pairs = first.Clustering.CrossedWith(second.Clustering);
        if (pairs.Count <= Math.Max(first.Means.Length, second.Means.Length))
        {
            return null;
        }

        var (one, two) = (StandardErrorOf(first.Means), StandardErrorOf(second.Means));
        var both = StandardErrorOf(pairs.MeansOf(values));
        var variance = (one * one) + (two * two) - (both * both);
        return variance > 0
            ? Interval(
                IntervalSource.CrossedRuns,
                Math.Min(first.Means.Length, second.Means.Length),
                mean,
                Math.Sqrt(variance),
                confidenceLevel
            )
            : null;
    }

    private static ClusterInterval Interval(
        IntervalSource source,
        int clusters,
        double mean,
        double standardError,
        double confidenceLevel
    )
    {
        var reach = StudentT.Quantile((1 + confidenceLevel) / 2, clusters - 1) * standardError;
        return new(source, clusters, mean, standardError, clusters - 1, mean - reach, mean + reach);
    }

    private static double StandardErrorOf(double[] means) =>
        Moments.Of(means).StandardDeviation / Math.Sqrt(means.Length);
}

namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Arithmetic mean of values that come in clusters (collection days, runs): the wider of the t interval over the
/// values and the t interval over the cluster means.
/// </summary>
/// <remarks>
/// A run's error is the same for all its specimens and does not average out over them; the cluster means carry it in
/// full. Cluster means as the unit of analysis: Donner and Klar (2000), Design and Analysis of Cluster Randomization
/// Trials in Health Research, chapters 6 and 7 (cited from memory). Taking the wider of the two is our own rule: with few clusters the cluster interval alone
/// has so few degrees of freedom that it is sometimes narrow by chance.
/// <para>
/// Clusters of different size give the two intervals different centers. The result then reaches from the smaller lower
/// to the larger upper end, so that it is never narrower than either and may be wider than both.
/// </para>
/// Assumptions: clusters are independent of each other; cluster means are close to normally distributed.
/// </remarks>
public static class ClusteredMean
{
    /// <summary>Computes mean and interval.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="cluster">The cluster of each value, any whole numbers; same length.</param>
    /// <param name="confidenceLevel">Two-sided level, strictly between 0 and 1.</param>
    /// <returns>
    /// Fewer than two values: <see cref="AssumptionCode.TooFewValues"/>. One cluster: the interval over the values, with the
    /// note <see cref="AssumptionCode.OneCluster"/>. All values the same: the note <see cref="AssumptionCode.ZeroSpread"/>.
    /// </returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not a number, or the level is not strictly between 0 and 1.</exception>
    public static Estimate<ClusteredMeanInterval> WithInterval(
        ReadOnlySpan<double> values,
        ReadOnlySpan<int> cluster,
        double confidenceLevel
    )
    {
        var members = Members(values, cluster);
        var overValues = ArithmeticMean.WithInterval(values, confidenceLevel);
        if (!overValues.TryGet(out var bySpecimen))
        {
            return Estimate.Refused<ClusteredMeanInterval>(Refusal.TooFewForMean);
        }

        var means = members.Select(MeanOf).ToArray();
        var overClusters = ArithmeticMean.WithInterval(means, confidenceLevel);
        var widest = bySpecimen;
        var lower = bySpecimen.Lower;
        var upper = bySpecimen.Upper;
        // With one value in every cluster both intervals are the same one and only rounding could tell them apart.
        if (means.Length < values.Length && overClusters.TryGet(out var byCluster))
        {
            widest = byCluster.Upper - byCluster.Lower > upper - lower ? byCluster : bySpecimen;
            lower = Math.Min(lower, byCluster.Lower);
            upper = Math.Max(upper, byCluster.Upper);
        }

        var result = new ClusteredMeanInterval(
            bySpecimen,
            overClusters,
            means.Length,
            bySpecimen.Mean,
            confidenceLevel,
            lower,
            upper,
            widest.StandardError,
            widest.DegreesOfFreedom,
            ReferenceEquals(widest, bySpecimen) ? WidestInterval.Specimens : WidestInterval.Clusters
        );
        return new Estimate<ClusteredMeanInterval>(
            result,
            null,
            means.Length == 1 ? overValues.Notes.Add(EstimateNote.OneCluster) : overValues.Notes
        );
    }

    /// <summary>The values of each cluster, by its number.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    internal static IReadOnlyList<double[]> Members(
        ReadOnlySpan<double> values,
        ReadOnlySpan<int> cluster
    )
    {
        if (values.Length != cluster.Length)
        {
            throw new ArgumentException("Each value needs one cluster.", nameof(cluster));
        }

        var members = new SortedDictionary<int, List<double>>();
        for (var i = 0; i < values.Length; i++)
        {
            if (!members.TryGetValue(cluster[i], out var list))
            {
                list = [];
                members.Add(cluster[i], list);
            }

            list.Add(values[i]);
        }

        return [.. members.Values.Select(list => list.ToArray())];
    }

    private static double MeanOf(double[] members) =>
        members.Length == 1 ? members[0] : Moments.Of(members).Mean;
}

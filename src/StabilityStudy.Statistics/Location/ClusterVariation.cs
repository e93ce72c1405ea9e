namespace StabilityStudy.Statistics.Location;

/// <summary>How much the values of one cluster (collection day, run) have in common, and what that adds to the error of their mean.</summary>
/// <remarks>
/// One-way analysis of variance over clusters: F is the mean square between them over the mean square within. The
/// variance that clusters share is (MSB − MSW)/m₀ with m₀ = (n − Σm²/n)/(D − 1), not below 0; in the mean of all values it
/// is taken Σm²/n² times.
/// Source: Searle, Casella and McCulloch (1992), Variance Components, chapter 3 (cited from memory).
/// Assumptions: independent clusters, values of one spread within them.
/// </remarks>
public static class ClusterVariation
{
    /// <summary>Computes the analysis.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="clustering">The cluster of each value.</param>
    /// <returns>
    /// One cluster, or no cluster with two values: <see cref="AssumptionCode.TooFewValues"/>. All values the same:
    /// <see cref="AssumptionCode.ZeroSpread"/>.
    /// </returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not a number.</exception>
    public static Estimate<ClusterVariationTest> Compute(
        ReadOnlySpan<double> values,
        Clustering clustering
    )
    {
        Require.Numbers(values, nameof(values));
        clustering.RequireOneFor(values);
        var n = values.Length;
        var clusters = clustering.Count;
        if (clusters < 2 || n <= clusters)
        {
            return Estimate.Refused<ClusterVariationTest>(Refusal.TooFewForClusterVariation);
        }

        using var members = clustering.Members(values);
        var grand = Moments.Of(values).Mean;
        double between = 0;
        double within = 0;
        double squaredSizes = 0;
        for (var i = 0; i < clusters; i++)
        {
            var size = members[i].Length;
            var mean = Moments.MeanOf(members[i]);
            between += size * (mean - grand) * (mean - grand);
            within += SquaresAround(mean, members[i]);
            squaredSizes += (double)size * size;
        }

        if (between + within == 0)
        {
            return Estimate.Refused<ClusterVariationTest>(Refusal.SameValues);
        }

        var meanSquareBetween = between / (clusters - 1);
        var meanSquareWithin = within / (n - clusters);
        var usualSize = (n - (squaredSizes / n)) / (clusters - 1);
        var shared = Math.Max(0, (meanSquareBetween - meanSquareWithin) / usualSize);
        var ratio = meanSquareBetween / meanSquareWithin;
        return Estimate.Of(
            new ClusterVariationTest(
                n,
                clusters,
                meanSquareBetween,
                meanSquareWithin,
                ratio,
                FisherF.UpperTail(ratio, clusters - 1, n - clusters),
                Math.Sqrt(shared),
                Math.Sqrt(shared * squaredSizes) / n
            )
        );
    }

    private static double SquaresAround(double mean, ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return sum;
    }
}

using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Location;

/// <summary>How large the variance behind a sample may be: one-sided upper bounds of normal variances, exact for one variance and approximate for what clusters share.</summary>
/// <remarks>
/// One variance: ν·s²/χ²(1 − level; ν), with the quantile of χ² below which 1 − level lies; exact for independent normal values (any textbook).
/// What clusters share: with ȳ the D cluster means, S² = Σ(ȳ − mean of ȳ)²/(D − 1) each cluster once, h the harmonic mean of their sizes and MSW the mean square within,
/// (D − 1)·S²/χ²(1 − level; D − 1) − MSW/h, not below the estimate of <see cref="ClusterVariation"/>: clusters of uneven size keep D − 1 degrees of freedom to good approximation.
/// Source: Thomas and Hultquist (1978), Annals of Statistics 6:582–587; Burdick and Graybill (1992), Confidence Intervals on Variance Components (both cited from memory).
/// </remarks>
public static class VarianceBound
{
    /// <summary>The bound of one variance, in its unit.</summary>
    /// <param name="variance">The variance found, 0 or above.</param>
    /// <param name="degreesOfFreedom">At least 1.</param>
    /// <param name="confidenceLevel">One-sided level, above 0.5 and below 1.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static double Upper(double variance, double degreesOfFreedom, double confidenceLevel)
    {
        Require.Number(variance, nameof(variance));
        Require.DegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        Require.OneSidedConfidence(confidenceLevel, nameof(confidenceLevel));
        return variance < 0
            ? throw new ArgumentException("A variance is not negative.", nameof(variance))
            : degreesOfFreedom
                * variance
                / ChiSquared.UpperQuantile(confidenceLevel, degreesOfFreedom);
    }

    /// <summary>The bounds of what the values of a cluster share and of what each has for itself.</summary>
    /// <param name="values">Numbers in one unit, in any order; not written to.</param>
    /// <param name="clustering">The cluster of each value.</param>
    /// <param name="confidenceLevel">One-sided level of each bound, above 0.5 and below 1.</param>
    /// <returns>Refused where <see cref="ClusterVariation"/> is.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a value is not a number or the level is outside its range.</exception>
    public static Estimate<ClusterVarianceBounds> OfClusters(
        ReadOnlySpan<double> values,
        Clustering clustering,
        double confidenceLevel
    )
    {
        Require.OneSidedConfidence(confidenceLevel, nameof(confidenceLevel));
        using var members = clustering.Members(values);
        var variation = ClusterVariation.Compute(values, clustering);
        return variation.TryGet(out var found)
            ? Estimate.Of(Bounds(members, found, confidenceLevel))
            : variation.RefusedAs<ClusterVarianceBounds>();
    }

    private static ClusterVarianceBounds Bounds(
        ClusterMembers members,
        ClusterVariationTest found,
        double confidenceLevel
    )
    {
        var amongMeans = Math.Pow(Moments.Of(members.Means()).StandardDeviation, 2);
        var reciprocals = 0.0;
        for (var i = 0; i < members.Count; i++)
        {
            reciprocals += 1.0 / members[i].Length;
        }

        var ofOneMean = found.MeanSquareWithin * reciprocals / members.Count;
        return new ClusterVarianceBounds(
            Math.Max(
                found.SharedStandardDeviation * found.SharedStandardDeviation,
                Upper(amongMeans, found.Clusters - 1, confidenceLevel) - ofOneMean
            ),
            Upper(found.MeanSquareWithin, found.Count - found.Clusters, confidenceLevel),
            confidenceLevel
        );
    }
}

/// <summary>Upper bounds of the two parts of a variance, in the squared unit of the values.</summary>
/// <param name="Shared">Bound of the variance that values of a cluster share.</param>
/// <param name="Within">Bound of the variance within clusters.</param>
/// <param name="ConfidenceLevel">One-sided level of each.</param>
public sealed record ClusterVarianceBounds(double Shared, double Within, double ConfidenceLevel);

namespace StabilityStudy.Statistics.Planning;

/// <summary>The smallest number of pairs at which a criterion reaches a wanted power; null when none up to a cap does.</summary>
/// <remarks>
/// Every number is tried in turn, because power need not rise with each pair: that of the individual criterion falls where a further
/// pair does not yet allow a further failure, so that a few pairs more than the number given can have a little less power.
/// Assumptions and sources are those of <see cref="EquivalencePower"/> and <see cref="IndividualPower"/>.
/// </remarks>
public static class SmallestN
{
    /// <summary>For the interval of the mean change inside its limits; the arguments are those of <see cref="EquivalencePower.Of"/>.</summary>
    /// <param name="power">Wanted power, strictly between 0 and 1.</param>
    /// <param name="meanChange">True mean change, in the unit of the limits.</param>
    /// <param name="standardDeviation">True standard deviation of the changes, above 0.</param>
    /// <param name="lower">Lower limit.</param>
    /// <param name="upper">Upper limit, above the lower.</param>
    /// <param name="confidenceLevel">Two-sided level of the interval.</param>
    /// <param name="mostPairs">The largest number that is tried, at least 2.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static int? ForEquivalence(
        double power,
        double meanChange,
        double standardDeviation,
        double lower,
        double upper,
        double confidenceLevel,
        int mostPairs
    ) =>
        First(
            n =>
                EquivalencePower.Of(
                    n,
                    meanChange,
                    standardDeviation,
                    lower,
                    upper,
                    confidenceLevel
                ),
            power,
            2,
            mostPairs
        );

    /// <summary>
    /// The same where the interval over clusters, such as collection days, decides: with so many pairs a cluster, n pairs bring n ÷ that many clusters (whole ones), whose means have D − 1 degrees of freedom.
    /// </summary>
    /// <param name="power">Wanted power, strictly between 0 and 1.</param>
    /// <param name="meanChange">True mean change, in the unit of the limits.</param>
    /// <param name="standardDeviation">True standard deviation of the cluster means, above 0.</param>
    /// <param name="pairsPerCluster">Pairs a cluster, at least 1.</param>
    /// <param name="lower">Lower limit.</param>
    /// <param name="upper">Upper limit, above the lower.</param>
    /// <param name="confidenceLevel">Two-sided level of the interval.</param>
    /// <param name="mostPairs">The largest number that is tried, at least 2.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static int? ForClusteredEquivalence(
        double power,
        double meanChange,
        double standardDeviation,
        double pairsPerCluster,
        double lower,
        double upper,
        double confidenceLevel,
        int mostPairs
    )
    {
        if (!(pairsPerCluster >= 1))
        {
            throw new ArgumentException("A cluster has a pair.", nameof(pairsPerCluster));
        }

        return First(
            n =>
                (int)(n / pairsPerCluster) is >= 2 and var clusters
                    ? EquivalencePower.Of(
                        clusters,
                        meanChange,
                        standardDeviation,
                        lower,
                        upper,
                        confidenceLevel
                    )
                    : 0,
            power,
            2,
            mostPairs
        );
    }

    /// <summary>For the share of pairs within the allowance; the arguments are those of <see cref="IndividualPower.Of"/>.</summary>
    /// <param name="power">Wanted power, strictly between 0 and 1.</param>
    /// <param name="trueShare">True share within, 0 and 1 included.</param>
    /// <param name="requiredShare">Share to be shown, strictly between 0 and 1.</param>
    /// <param name="confidenceLevel">One-sided level, strictly between 0 and 1.</param>
    /// <param name="mostPairs">The largest number that is tried, from 1 to a million.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static int? ForIndividual(
        double power,
        double trueShare,
        double requiredShare,
        double confidenceLevel,
        int mostPairs
    ) =>
        First(
            n => IndividualPower.Of(n, trueShare, requiredShare, confidenceLevel),
            power,
            1,
            mostPairs
        );

    private static int? First(Func<int, double> powerAt, double power, int fewest, int mostPairs)
    {
        Require.InsideUnitInterval(power, nameof(power));
        if (mostPairs < fewest)
        {
            throw new ArgumentException("No number of pairs could be tried.", nameof(mostPairs));
        }

        for (var n = fewest; n <= mostPairs; n++)
        {
            if (powerAt(n) >= power)
            {
                return n;
            }
        }

        return null;
    }
}

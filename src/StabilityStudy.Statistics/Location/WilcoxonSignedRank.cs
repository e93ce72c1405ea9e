namespace StabilityStudy.Statistics.Location;

/// <summary>Wilcoxon's signed-rank test of paired differences.</summary>
/// <param name="Count">Number of differences other than zero.</param>
/// <param name="Zeros">Number of differences of zero, which are left out.</param>
/// <param name="PositiveRankSum">V, the sum of the ranks of the positive differences; tied sizes share their mean rank.</param>
/// <param name="PValue">Two-sided p value, exact given the tied ranks; beyond 1000 differences the same as <paramref name="NormalPValue"/>.</param>
/// <param name="NormalPValue">Two-sided p value of the normal approximation, corrected for ties and continuity.</param>
public sealed record SignedRankTest(
    int Count,
    int Zeros,
    double PositiveRankSum,
    double PValue,
    double NormalPValue
);

/// <summary>
/// Wilcoxon's signed-rank test on the differences y − x. Shown beside an equivalence test so that a reader sees that "no significant difference" is not equivalence.
/// </summary>
/// <remarks>
/// Zeros are left out and the sizes of the others ranked, tied sizes sharing their mean rank. Given those ranks, every pattern of signs is equally likely when the
/// differences are symmetric about zero; two-sided p = min(1, 2·min(P(V ≤ v), P(V ≥ v))), from the exact distribution on doubled mean ranks, which are whole numbers. Normal approximation:
/// mean n(n + 1)/4, variance n(n + 1)(2n + 1)/24 − Σ(t³ − t)/48 over groups of t equal sizes, continuity correction ½.
/// Source: Wilcoxon (1945), Biometrics Bulletin 1:80–83; Hollander and Wolfe (1973), section 3.1 (cited from memory).
/// Assumptions: independent differences, symmetric about their center. Ties and zeros are decided exactly. Beyond 1000 differences only the normal approximation, with a note.
/// </remarks>
public static class WilcoxonSignedRank
{
    /// <summary>Computes the test.</summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <returns>The test; or zero spread when every difference is zero (or there is none at all: too few values).</returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    public static Estimate<SignedRankTest> Compute(ExactPairs pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        if (pairs.Count == 0)
        {
            return Estimate.Refused<SignedRankTest>(Refusal.NoneForSignedRank);
        }

        long[] differences =
        [
            .. pairs.ScaledY.Zip(pairs.ScaledX, (y, x) => y - x).Where(d => d != 0),
        ];
        if (differences.Length == 0)
        {
            return Estimate.Refused<SignedRankTest>(Refusal.NoDifferenceToRank);
        }

        var n = differences.Length;
        var groups = differences.GroupBy(Math.Abs).OrderBy(group => group.Key).ToArray();
        var doubledRanks = new List<int>(n);
        var doubledSum = 0L;
        var ties = 0.0;
        foreach (var group in groups)
        {
            var size = group.Count();

            // The mean of the ranks c + 1 … c + size, doubled.
            var doubled = (2 * doubledRanks.Count) + size + 1;
            doubledSum += (long)doubled * group.Count(d => d > 0);
            doubledRanks.AddRange(Enumerable.Repeat(doubled, size));
            ties += ((double)size * size * size) - size;
        }

        var normal = NormalPValue(n, doubledSum / 2.0, ties);
        return n <= SignedRankDistribution.LargestExact
            ? Estimate.Of(Result(Exact(doubledRanks, doubledSum)))
            : Estimate.Of(Result(normal), EstimateNote.ApproximatePValue);

        SignedRankTest Result(double p) => new(n, pairs.Count - n, doubledSum / 2.0, p, normal);
    }

    /// <summary>The distribution is symmetric, so the smaller tail is the one up to the smaller of the two rank sums.</summary>
    private static double Exact(List<int> doubledRanks, long doubledSum)
    {
        var n = doubledRanks.Count;
        var smaller = (int)Math.Min(doubledSum, (n * (n + 1)) - doubledSum);
        var patterns = new double[smaller + 1];
        patterns[0] = 1;
        var reached = 0;
        foreach (var rank in doubledRanks)
        {
            reached = Math.Min(reached + rank, smaller);
            SubsetSums.Add(patterns, rank, reached);
        }

        return Math.Min(1, 2 * patterns.Sum(count => Math.ScaleB(count, -n)));
    }

    private static double NormalPValue(int n, double rankSum, double ties)
    {
        var distance = Math.Abs(rankSum - (n * (n + 1.0) / 4));
        var variance = (n * (n + 1.0) * ((2.0 * n) + 1) / 24) - (ties / 48);
        return Math.Min(1, 2 * Normal.Cdf(-Math.Max(0, distance - 0.5) / Math.Sqrt(variance)));
    }
}

using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Kendall's rank correlation: do x and y order the pairs alike?</summary>
public static class KendallRankCorrelation
{
    private const int FewestPairs = 3;

    /// <summary>
    /// τ-b = (C − D)/√((T − Tx)(T − Ty)) with C concordant and D discordant twos among T = n(n − 1)/2, and Tx, Ty twos tied in x, in y (Kendall,
    /// Biometrika 33 (1945) 239–251; from memory). The interval is τ-b ± z·SE, cut at −1 and 1, with the asymptotic standard error under
    /// multinomial sampling (Brown and Benedetti, J Am Stat Assoc 72 (1977) 309–315; from memory): with wr = n² − Σ(size of a tie group of x)², wc likewise for
    /// y, w = √(wr·wc), dᵢ = concordant minus discordant partners of pair i, and vᵢ = wc·(size of its x group) + wr·(size of its y group),
    /// SE² = Σ(tᵢ − t̄)²/w⁴, tᵢ = 2w·dᵢ + τ-b·vᵢ. (The printed form subtracts n³τ²(wr + wc)² from Σtᵢ², which is the same number; the centered form cannot turn negative.)
    /// Assumes independent pairs. Order and ties are decided exactly on whole numbers. Smallest n: 3; the interval is an approximation for large
    /// n, and a perfect order gives it no width. Time grows with n log n.
    /// </summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="confidenceLevel">Two-sided level, between 0 and 1.</param>
    /// <returns>τ-b; or too few values, a constant x (constant baseline) or a constant y (zero spread).</returns>
    /// <exception cref="ArgumentNullException">There are no pairs at all.</exception>
    /// <exception cref="ArgumentException">The level is not between 0 and 1.</exception>
    public static Estimate<KendallTau> Compute(ExactPairs pairs, double confidenceLevel)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        return pairs.Association(confidenceLevel);
    }

    /// <summary>The same of pairs that are not null and at a checked level.</summary>
    internal static Estimate<KendallTau> Of(ExactPairs pairs, double confidenceLevel)
    {
        var n = pairs.Count;
        if (n < FewestPairs)
        {
            return Estimate.Refused<KendallTau>(Refusal.TooFewForRankCorrelation);
        }

        var x = pairs.ScaledX.AsSpan();
        var y = pairs.ScaledY.AsSpan();
        if (!x.ContainsAnyExcept(x[0]))
        {
            return Estimate.Refused<KendallTau>(Refusal.BaselinesOrderNothing);
        }

        if (!y.ContainsAnyExcept(y[0]))
        {
            return Estimate.Refused<KendallTau>(Refusal.SecondValuesOrderNothing);
        }

        return Estimate.Of(FromPartners(Partners(pairs), confidenceLevel));
    }

    /// <summary>
    /// Counts, in the order of x, the partners passed so far by the rank of their y; those still to come are the rest of all with such a y: n log n, where all twos would take n².
    /// </summary>
    private static Partner[] Partners(ExactPairs pairs)
    {
        var n = pairs.Count;
        var x = pairs.ScaledX.AsSpan();
        var order = pairs.ByXThenY.AsSpan();
        var (rank, firsts) = Ranked(pairs.ScaledY.AsSpan());
        var passed = new PrefixCounts(firsts.Length);
        var partners = new Partner[n];
        for (var start = 0; start < n; )
        {
            var end = start + 1;
            while (end < n && x[order[end]] == x[order[start]])
            {
                end++;
            }

            for (int i = start, sameX = start; i < end; i++)
            {
                // Points of one x stand in the order of y: those before this one's run of ties have a smaller y.
                var own = rank[order[i]];
                sameX = rank[order[sameX]] == own ? sameX : i;
                var runEnd = i + 1;
                while (runEnd < end && rank[order[runEnd]] == own)
                {
                    runEnd++;
                }

                var smallerY = firsts[own];
                var nextY = own + 1 < firsts.Length ? firsts[own + 1] : n;
                var passedSmaller = passed.Below(own);
                var passedLarger = start - passed.Below(own + 1);
                var toComeSmaller = smallerY - passedSmaller - (sameX - start);
                var toComeLarger = n - nextY - passedLarger - (end - runEnd);
                partners[i] = new Partner(
                    passedSmaller + toComeLarger,
                    passedLarger + toComeSmaller,
                    end - start,
                    nextY - smallerY
                );
            }

            for (var i = start; i < end; i++)
            {
                passed.Add(rank[order[i]]);
            }

            start = end;
        }

        return partners;
    }

    /// <summary>The rank of each value among the different ones, from 0, and how many values lie below each of those.</summary>
    private static (int[] Rank, int[] Below) Ranked(ReadOnlySpan<long> values)
    {
        var sorted = new Keyed<long>[values.Length];
        for (var i = 0; i < sorted.Length; i++)
        {
            sorted[i] = new(values[i], i);
        }

        MergeSort.ByKey(sorted.AsSpan());
        var rank = new int[sorted.Length];
        var below = new List<int>();
        for (var i = 0; i < sorted.Length; i++)
        {
            if (i == 0 || sorted[i].Key != sorted[i - 1].Key)
            {
                below.Add(i);
            }

            rank[sorted[i].Item] = below.Count - 1;
        }

        return (rank, [.. below]);
    }

    /// <summary>Counts of places from 0 to n − 1, with sums from the front in log n (Fenwick 1994).</summary>
    private sealed class PrefixCounts(int size)
    {
        private readonly int[] _sums = new int[size + 1];

        public void Add(int place)
        {
            for (var i = place + 1; i < _sums.Length; i += i & -i)
            {
                _sums[i]++;
            }
        }

        /// <summary>How many were added at places below one.</summary>
        public int Below(int place)
        {
            var sum = 0;
            for (var i = place; i > 0; i -= i & -i)
            {
                sum += _sums[i];
            }

            return sum;
        }
    }

    private static KendallTau FromPartners(Partner[] partners, double confidenceLevel)
    {
        var n = partners.LongLength;
        var concordant = partners.Sum(p => p.Concordant) / 2;
        var discordant = partners.Sum(p => p.Discordant) / 2;
        var sameX = partners.Sum(p => p.SameX);
        var sameY = partners.Sum(p => p.SameY);
        var wr = (double)((n * n) - sameX);
        var wc = (double)((n * n) - sameY);
        var w = Math.Sqrt(wr) * Math.Sqrt(wc);
        var tau = Math.Clamp(2 * (concordant - discordant) / w, -1, 1);

        // Divided by w once here, so that large n cannot lose digits in w⁴.
        var terms = partners
            .Select(p =>
                (2.0 * (p.Concordant - p.Discordant))
                + (tau * ((wc * p.SameX) + (wr * p.SameY)) / w)
            )
            .ToArray();
        var mean = terms.Sum() / n;
        var standardError = Math.Sqrt(terms.Sum(t => (t - mean) * (t - mean))) / w;
        var margin = Normal.Quantile((1 + confidenceLevel) / 2) * standardError;
        return new KendallTau(
            (int)n,
            concordant,
            discordant,
            (sameX - n) / 2,
            (sameY - n) / 2,
            tau,
            standardError,
            Math.Max(-1, tau - margin),
            Math.Min(1, tau + margin),
            confidenceLevel
        );
    }

    /// <summary>How the other pairs stand to one pair; the pair itself counts as having the same x and y.</summary>
    [StructLayout(LayoutKind.Auto)]
    private record struct Partner(long Concordant, long Discordant, long SameX, long SameY);
}

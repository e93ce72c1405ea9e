using System.Numerics;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Whether pairs bend away from their Passing–Bablok line.</summary>
/// <param name="Statistic">H, the largest cumulative sum divided by √(L + 1).</param>
/// <param name="CriticalValue">What H must exceed.</param>
/// <param name="DeviatesFromLinearity">Whether H exceeds it.</param>
/// <param name="Above">Number of pairs above the line.</param>
/// <param name="Below">L, the number of pairs below the line.</param>
public sealed record CusumLinearity(
    double Statistic,
    double CriticalValue,
    bool DeviatesFromLinearity,
    int Above,
    int Below
);

/// <summary>The cusum test of Passing and Bablok for linearity; its result is part of <see cref="PassingBablokFit"/>.</summary>
internal static class CusumTest
{
    /// <summary>Five percent point of the limiting distribution of the Kolmogorov–Smirnov statistic, as the paper takes it.</summary>
    public const double CriticalValueAtFivePercent = 1.36;

    /// <summary>
    /// Pairs above the line score √(L/l), pairs below −√(l/L), pairs on it 0, with l pairs above and L below. The scores are summed up in the order of x + b·y, along the line; H is the
    /// largest absolute sum divided by √(L + 1), compared with 1.36 at 5 % (Passing and Bablok, J Clin Chem Clin Biochem 21 (1983) 709–720; from memory).
    /// The sum is looked at only after all pairs of one place along the line, so that the order of tied pairs does not matter. Places, and which
    /// pairs lie on the line, are decided exactly on whole numbers. Assumptions are those of <see cref="PassingBablok.Fit"/>; not to
    /// find a bend is no proof of a straight line.
    /// </summary>
    /// <param name="pairs">The pairs, on one decimal scale.</param>
    /// <param name="first">The lower of the two middle slopes; not vertical.</param>
    /// <param name="second">The upper of the two middle slopes; not vertical.</param>
    public static CusumLinearity Compute(ExactPairs pairs, ExactSlope first, ExactSlope second)
    {
        // The mean of two fractions: (r₁/q₁ + r₂/q₂)/2.
        var run = 2 * (BigInteger)first.Run * second.Run;
        var rise = ((BigInteger)first.Rise * second.Run) + ((BigInteger)second.Rise * first.Run);
        var reach = BigInteger.Max(Reach(pairs.ScaledX), Reach(pairs.ScaledY));
        var largest = 4 * reach * (BigInteger.Abs(rise) + run);
        return largest < long.MaxValue ? FromLine(pairs, (long)rise, (long)run)
            : largest < (BigInteger)Int128.MaxValue ? FromLine(pairs, (Int128)rise, (Int128)run)
            : FromLine(pairs, rise, run);
    }

    /// <summary>The largest distance from zero.</summary>
    private static long Reach(ImmutableArray<long> values) => values.Max(Math.Abs);

    private static CusumLinearity FromLine<T>(ExactPairs pairs, T rise, T run)
        where T : struct, IBinaryInteger<T>
    {
        var intercepts = new T[pairs.Count];
        var places = new Keyed<T>[pairs.Count];
        for (var i = 0; i < places.Length; i++)
        {
            var (x, y) = (T.CreateChecked(pairs.ScaledX[i]), T.CreateChecked(pairs.ScaledY[i]));
            intercepts[i] = (y * run) - (x * rise);
            places[i] = new((x * run) + (y * rise), i);
        }

        var parted = (T[])intercepts.Clone();
        var twiceMedian =
            MiddleValue.AtRank(parted.AsSpan(), parted.Length / 2)
            + MiddleValue.AtRank(parted.AsSpan(), (parted.Length - 1) / 2);
        var sides = Array.ConvertAll(intercepts, value => (value + value).CompareTo(twiceMedian));
        var above = sides.Count(side => side > 0);
        var below = sides.Count(side => side < 0);
        var up = above == 0 ? 0 : Math.Sqrt((double)below / above);
        var down = below == 0 ? 0 : Math.Sqrt((double)above / below);
        MergeSort.ByKey(places.AsSpan());
        var largest = 0.0;
        var aboveSoFar = 0;
        var belowSoFar = 0;
        for (var i = 0; i < places.Length; i++)
        {
            var side = sides[places[i].Item];
            aboveSoFar += side > 0 ? 1 : 0;
            belowSoFar += side < 0 ? 1 : 0;
            if (i == places.Length - 1 || places[i].Key != places[i + 1].Key)
            {
                largest = Math.Max(largest, Math.Abs((aboveSoFar * up) - (belowSoFar * down)));
            }
        }

        var statistic = largest / Math.Sqrt(below + 1);
        return new CusumLinearity(
            statistic,
            CriticalValueAtFivePercent,
            statistic > CriticalValueAtFivePercent,
            above,
            below
        );
    }
}

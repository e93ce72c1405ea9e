using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Order statistics of the n(n + 1)/2 Walsh averages (x_i + x_j)/2 with i ≤ j, without forming them: time n·log n, memory n.
/// </summary>
/// <remarks>
/// The number of averages up to a bound is counted in one walk along the sorted values. Around a rank a bound on either side is interpolated between those counted before, until no more averages lie
/// between them than there are values, which are then listed. Where two bounds gain little, since many averages are equal or lie far out, the range is halved over the
/// ordered bit patterns of the doubles, at most 64 times down to a single one.
/// </remarks>
internal sealed class WalshAverages
{
    private readonly double[] _halves;

    // The order of bounds, and how many averages lie up to each; the ends are the first two.
    private readonly List<(long Bound, long UpTo)> _counted;

    // The averages listed last, with the number of those below.
    private (double[] Averages, long Below) _listed = ([], 0);

    /// <summary>Takes a sorted copy of checked numbers.</summary>
    public WalshAverages(ReadOnlySpan<double> values)
    {
        // Halving first is exact and keeps sums of the largest doubles finite.
        _halves = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            _halves[i] = values[i] / 2;
        }

        MergeSort.Ascending(_halves.AsSpan());
        _counted = [(Order(2 * _halves[0]) - 1, 0), (Order(2 * _halves[^1]), Count)];
    }

    /// <summary>Number of averages.</summary>
    public long Count => _halves.Length * (_halves.Length + 1L) / 2;

    /// <summary>The middle average, or the mean of the two middle ones.</summary>
    public double Median
    {
        get
        {
            var upper = OfRank((Count / 2) + 1);
            return Count % 2 == 1 ? upper : (OfRank(Count / 2) / 2) + (upper / 2);
        }
    }

    /// <summary>The average of the given rank, counted from 1 at the smallest.</summary>
    public double OfRank(long rank)
    {
        // The average of the rank lies above the first bound and not above the second.
        var (lower, upper) = (_counted[0], _counted[1]);
        foreach (var counted in _counted)
        {
            lower = counted.UpTo < rank && counted.Bound > lower.Bound ? counted : lower;
            upper = counted.UpTo >= rank && counted.Bound < upper.Bound ? counted : upper;
        }

        while (lower.Bound + 1 < upper.Bound)
        {
            var (averages, below) = _listed;
            if (rank > below && rank <= below + averages.Length)
            {
                return MiddleValue.AtRank(averages, (int)(rank - below - 1));
            }

            if (upper.UpTo - lower.UpTo <= _halves.Length)
            {
                _listed = (Between(FromOrder(lower.Bound), FromOrder(upper.Bound)), lower.UpTo);
                continue;
            }

            var size = upper.UpTo - lower.UpTo;
            var reach = Math.Max(_halves.Length / 4, size / 64);
            Cut(Interpolated(rank - reach));
            Cut(Interpolated(rank + reach));
            if (upper.UpTo - lower.UpTo > size / 2)
            {
                // The floor of the mean of two whole numbers whose sum may overflow.
                Cut((lower.Bound & upper.Bound) + ((lower.Bound ^ upper.Bound) >> 1));
            }
        }

        return FromOrder(upper.Bound);

        long Interpolated(long place)
        {
            var share = (double)(place - lower.UpTo) / (upper.UpTo - lower.UpTo);
            var (from, to) = (FromOrder(lower.Bound), FromOrder(upper.Bound));
            return Order(from + (Math.Clamp(share, 0, 1) * (to - from)));
        }

        void Cut(long bound)
        {
            if (bound <= lower.Bound || bound >= upper.Bound)
            {
                return;
            }

            var upTo = CountUpTo(FromOrder(bound));
            _counted.Add((bound, upTo));
            (lower, upper) = upTo < rank ? ((bound, upTo), upper) : (lower, (bound, upTo));
        }
    }

    /// <summary>The averages above a bound and not above another.</summary>
    private double[] Between(double lower, double upper)
    {
        var averages = new List<double>(_halves.Length);
        var j = _halves.Length - 1;
        for (var i = 0; i < _halves.Length; i++)
        {
            while (j >= 0 && _halves[i] + _halves[j] > upper)
            {
                j--;
            }

            for (var k = j; k >= i && _halves[i] + _halves[k] > lower; k--)
            {
                // Zero has no sign, as in the order of bounds.
                averages.Add(_halves[i] + _halves[k] + 0.0);
            }
        }

        return [.. averages];
    }

    private long CountUpTo(double bound)
    {
        var count = 0L;
        var j = _halves.Length - 1;
        for (var i = 0; i <= j; i++)
        {
            while (j >= i && _halves[i] + _halves[j] > bound)
            {
                j--;
            }

            count += j - i + 1;
        }

        return count;
    }

    /// <summary>Whole numbers in the order of the doubles: the bit patterns of negative numbers run backward.</summary>
    private static long Order(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value + 0.0);
        return bits >= 0 ? bits : -(bits & long.MaxValue);
    }

    private static double FromOrder(long order) =>
        order >= 0
            ? BitConverter.Int64BitsToDouble(order)
            : -BitConverter.Int64BitsToDouble(-order);
}

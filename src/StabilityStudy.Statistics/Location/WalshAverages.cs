namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Order statistics of the n(n + 1)/2 Walsh averages (x_i + x_j)/2 with i ≤ j, without forming them: time n·log n, memory n.
/// </summary>
/// <remarks>
/// The number of averages up to a bound is counted in one walk along the sorted values; the range of bounds is halved over the
/// ordered bit patterns of the doubles until no more averages lie in it than there are values, which are then listed and sorted. Where many are equal it
/// is halved down to a single one, at most 64 times.
/// </remarks>
internal sealed class WalshAverages
{
    private readonly double[] _halves;

    /// <summary>Takes a sorted copy of checked numbers.</summary>
    public WalshAverages(ReadOnlySpan<double> values)
    {
        // Halving first is exact and keeps sums of the largest doubles finite.
        _halves = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            _halves[i] = values[i] / 2;
        }

        Array.Sort(_halves);
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
        var (lower, below) = (Order(2 * _halves[0]) - 1, 0L);
        var (upper, upTo) = (Order(2 * _halves[^1]), Count);
        while (lower + 1 < upper)
        {
            if (upTo - below <= _halves.Length)
            {
                return Between(FromOrder(lower), FromOrder(upper))[(int)(rank - below - 1)];
            }

            // The floor of the mean of two whole numbers whose sum may overflow.
            var middle = (lower & upper) + ((lower ^ upper) >> 1);
            var count = CountUpTo(FromOrder(middle));
            if (count >= rank)
            {
                (upper, upTo) = (middle, count);
            }
            else
            {
                (lower, below) = (middle, count);
            }
        }

        return FromOrder(upper);
    }

    /// <summary>The averages above a bound and not above another, ascending.</summary>
    private List<double> Between(double lower, double upper)
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

        averages.Sort();
        return averages;
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

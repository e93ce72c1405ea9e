namespace StabilityStudy.Statistics.Location;

/// <summary>
/// Order statistics of the n(n + 1)/2 Walsh averages (x_i + x_j)/2 with i ≤ j, without forming them: time n·log n, memory n.
/// </summary>
/// <remarks>
/// The number of averages up to a bound is counted in one walk along the sorted values; the bound is halved over the
/// ordered bit patterns of the doubles, at most 64 times, so that the average found is exactly one of the averages.
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
        var lower = Order(2 * _halves[0]);
        var upper = Order(2 * _halves[^1]);
        while (lower < upper)
        {
            // The floor of the mean of two whole numbers whose sum may overflow.
            var middle = (lower & upper) + ((lower ^ upper) >> 1);
            if (CountUpTo(FromOrder(middle)) >= rank)
            {
                upper = middle;
            }
            else
            {
                lower = middle + 1;
            }
        }

        return FromOrder(lower);
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

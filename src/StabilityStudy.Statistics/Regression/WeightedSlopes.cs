using System.Numerics;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slopes between all twos of pairs in their exact order, so that the Passing–Bablok line of any sample of the pairs, drawn with replacement or with one left out, is found by weights.
/// </summary>
/// <remarks>
/// A two counts as often as its first pair was drawn times its second. How many slopes of a sample lie below the middle slope of all pairs is a sum over the twos below it, which are kept as bits: counted sixty-four at a time. From there it
/// is a short walk to the median of the sample.
/// </remarks>
internal sealed class WeightedSlopes
{
    private static readonly ExactSlope s_minusOne = ExactSlope.Finite(1, -1);

    private readonly ExactPairs _pairs;

    /// <summary>The two pairs of each ranked slope, ascending; vertical ones last, those of −1 left out.</summary>
    private readonly (int First, int Second)[] _twos;

    private readonly double[] _slopes;

    /// <summary>Twos without a slope or of slope −1, which never count.</summary>
    private readonly (int First, int Second)[] _uncounted;

    /// <summary>Number of slopes below −1.</summary>
    private readonly int _belowMinusOne;

    /// <summary>Number of slopes before the middle one of all pairs, and which twos they belong to: for each first pair its second ones, a bit each.</summary>
    private readonly int _middle;

    private readonly ulong[] _beforeMiddle;

    /// <summary>Words that hold a bit for every pair.</summary>
    private readonly int _words;

    public WeightedSlopes(ExactPairs pairs)
    {
        _pairs = pairs;
        var finite = new List<(ExactSlope Slope, (int, int) Two)>();
        var vertical = new List<(int, int)>();
        var uncounted = new List<(int, int)>();
        for (var i = 0; i < pairs.Count; i++)
        {
            for (var j = i + 1; j < pairs.Count; j++)
            {
                var run = pairs.ScaledX[j] - pairs.ScaledX[i];
                var rise = pairs.ScaledY[j] - pairs.ScaledY[i];
                if (run != 0 && run != -rise)
                {
                    finite.Add((ExactSlope.Finite(run, rise), (i, j)));
                }
                else if (run == 0 && rise != 0)
                {
                    vertical.Add((i, j));
                }
                else
                {
                    uncounted.Add((i, j));
                }
            }
        }

        (_slopes, var twos) = ExactSlope.InOrder(finite);
        _twos = [.. twos, .. vertical];
        _uncounted = [.. uncounted];
        _belowMinusOne = finite.Count(item => ExactSlope.Compare(item.Slope, s_minusOne) < 0);
        _middle = Math.Min(_slopes.Length, (_twos.Length + _belowMinusOne) / 2);
        _words = (pairs.Count + 63) / 64;
        _beforeMiddle = new ulong[pairs.Count * _words];
        foreach (var (first, second) in _twos.AsSpan(0, _middle))
        {
            _beforeMiddle[(first * _words) + (second / 64)] |= 1UL << (second % 64);
        }
    }

    /// <summary>The line of a sample; null when it has no slope or a vertical one in the middle.</summary>
    /// <param name="sample">Numbers of pairs, with repetition.</param>
    public Line? LineOf(int[] sample)
    {
        var times = new int[_pairs.Count];
        foreach (var pair in sample)
        {
            times[pair]++;
        }

        return LineOfTimes(times);
    }

    /// <summary>The line without one pair.</summary>
    public Line? LineWithout(int pair)
    {
        var times = new int[_pairs.Count];
        Array.Fill(times, 1);
        times[pair] = 0;
        return LineOfTimes(times);
    }

    private Line? LineOfTimes(int[] times)
    {
        var count = WeightOfAll(times) - WeightOf(_uncounted, times);
        var below = WeightOf(_twos.AsSpan(0, _belowMinusOne), times);
        if (count == 0)
        {
            return null;
        }

        var (rank, weight) = (_middle, WeightBeforeMiddle(times));
        return
            At(((count + 1) / 2) + below) is { } lower && At((count / 2) + 1 + below) is { } upper
            ? new Line(MedianIntercept(times, (lower + upper) / 2), (lower + upper) / 2)
            : null;

        // The slope at a rank of the sample; null when it is vertical or beyond the last. Before the slope at `rank` lies `weight`.
        double? At(long wanted)
        {
            while (weight >= wanted)
            {
                weight -= Weight(_twos[--rank], times);
            }

            for (; rank < _slopes.Length; rank++)
            {
                var next = weight + Weight(_twos[rank], times);
                if (next >= wanted)
                {
                    return _slopes[rank];
                }

                weight = next;
            }

            return null;
        }
    }

    private static long Weight((int First, int Second) two, int[] times) =>
        (long)times[two.First] * times[two.Second];

    private static long WeightOf(ReadOnlySpan<(int, int)> twos, int[] times)
    {
        var weight = 0L;
        foreach (var two in twos)
        {
            weight += Weight(two, times);
        }

        return weight;
    }

    /// <summary>The twos of a sample, without those of copies of one pair.</summary>
    private static long WeightOfAll(int[] times)
    {
        var (sum, squares) = (0L, 0L);
        foreach (var time in times)
        {
            sum += time;
            squares += (long)time * time;
        }

        return ((sum * sum) - squares) / 2;
    }

    /// <summary>The numbers of draws are taken apart into their binary digits, so that those of many second pairs are added at once.</summary>
    private long WeightBeforeMiddle(int[] times)
    {
        var digits = 32 - BitOperations.LeadingZeroCount((uint)times.Max());
        var drawn = new ulong[digits * _words];
        for (var pair = 0; pair < times.Length; pair++)
        {
            for (var digit = 0; digit < digits; digit++)
            {
                drawn[(digit * _words) + (pair / 64)] |=
                    (ulong)((times[pair] >> digit) & 1) << (pair % 64);
            }
        }

        var weight = 0L;
        for (var first = 0; first < times.Length; first++)
        {
            if (times[first] == 0)
            {
                continue;
            }

            var seconds = 0L;
            var row = _beforeMiddle.AsSpan(first * _words, _words);
            for (var digit = 0; digit < digits; digit++)
            {
                var bits = drawn.AsSpan(digit * _words, _words);
                var found = 0;
                for (var word = first / 64; word < row.Length; word++)
                {
                    found += BitOperations.PopCount(row[word] & bits[word]);
                }

                seconds += (long)found << digit;
            }

            weight += times[first] * seconds;
        }

        return weight;
    }

    private double MedianIntercept(int[] times, double slope)
    {
        var intercepts = new double[times.Sum()];
        for (int pair = 0, next = 0; pair < times.Length; pair++)
        {
            for (var copy = 0; copy < times[pair]; copy++)
            {
                intercepts[next++] = _pairs.Y[pair] - (slope * _pairs.X[pair]);
            }
        }

        return MiddleValue.Of(intercepts);
    }
}

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slopes between all twos of pairs in their exact order, so that the Passing–Bablok line of any sample of the pairs, drawn with replacement or with one left out, is found in one pass by weights.
/// </summary>
internal sealed class WeightedSlopes
{
    private static readonly ExactSlope s_minusOne = ExactSlope.Finite(1, -1);

    private readonly ExactPairs _pairs;

    /// <summary>The two pairs of each ranked slope, ascending; vertical ones last, those of −1 left out.</summary>
    private readonly (int First, int Second)[] _twos;

    private readonly double[] _slopes;

    /// <summary>Number of slopes below −1.</summary>
    private readonly int _belowMinusOne;

    public WeightedSlopes(ExactPairs pairs)
    {
        _pairs = pairs;
        var finite = new List<(ExactSlope Slope, (int, int) Two)>();
        var vertical = new List<(int, int)>();
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
            }
        }

        finite.Sort((a, b) => ExactSlope.Compare(a.Slope, b.Slope));
        _twos = [.. finite.Select(item => item.Two), .. vertical];
        _slopes = [.. finite.Select(item => item.Slope.Value)];
        _belowMinusOne = finite.Count(item => ExactSlope.Compare(item.Slope, s_minusOne) < 0);
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
        var (count, below) = (0L, 0L);
        for (var i = 0; i < _twos.Length; i++)
        {
            count += Weight(i);
            below += i < _belowMinusOne ? Weight(i) : 0;
        }

        return
            count > 0
            && At(((count + 1) / 2) + below) is { } lower
            && At((count / 2) + 1 + below) is { } upper
            ? new Line(MedianIntercept(times, (lower + upper) / 2), (lower + upper) / 2)
            : null;

        long Weight(int two) => (long)times[_twos[two].First] * times[_twos[two].Second];

        // The slope at a rank; null when it is vertical or beyond the last.
        double? At(long rank)
        {
            for (var i = 0; i < _slopes.Length; i++)
            {
                rank -= Weight(i);
                if (rank <= 0)
                {
                    return _slopes[i];
                }
            }

            return null;
        }
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

        return PassingBablok.MedianOf(intercepts);
    }
}

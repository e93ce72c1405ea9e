using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>A place in the order of slopes: just before or just after all that equal one.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SlopeCut(ExactSlope Slope, bool IsAfter);

/// <summary>
/// Points in the order of x, and how many of the slopes between twos of them with different x lie before a cut: as many as there are inversions of the order of y − s·x, which a merge sort counts. All comparisons are of
/// whole numbers.
/// </summary>
internal sealed class PointsByX
{
    private readonly long[] _x;
    private readonly long[] _y;
    private readonly long _identical;
    private readonly long _largestY;

    /// <summary>The points of pairs.</summary>
    public PointsByX(ExactPairs pairs)
    {
        // Counted from the least, so that products stay small; slopes do not change.
        var (leastX, leastY) = (Least(pairs.ScaledX), Least(pairs.ScaledY));
        var order = pairs.ByXThenY;
        (_x, _y) = (new long[order.Length], new long[order.Length]);
        for (var i = 0; i < order.Length; i++)
        {
            _x[i] = pairs.ScaledX[order[i]] - leastX;
            _y[i] = pairs.ScaledY[order[i]] - leastY;
            _largestY = Math.Max(_largestY, _y[i]);
        }

        var (sameX, samePoint) = (0L, 0L);
        for (int i = 0, runX = 0, runPoint = 0; i < _x.Length; i++)
        {
            runX = i > 0 && _x[i] == _x[i - 1] ? runX + 1 : 0;
            runPoint = runX > 0 && _y[i] == _y[i - 1] ? runPoint + 1 : 0;
            sameX += runX;
            samePoint += runPoint;
        }

        _identical = samePoint;
        Vertical = sameX - samePoint;
        Finite = (_x.LongLength * (_x.LongLength - 1) / 2) - sameX;
    }

    /// <summary>Number of points.</summary>
    public int Count => _x.Length;

    /// <summary>Number of twos with different x.</summary>
    public long Finite { get; }

    /// <summary>Number of twos with the same x and different y.</summary>
    public long Vertical { get; }

    private static long Least(ImmutableArray<long> values) => values.DefaultIfEmpty().Min();

    /// <summary>The slope between two points of different x.</summary>
    public ExactSlope Slope(int first, int second) =>
        ExactSlope.Finite(_x[second] - _x[first], _y[second] - _y[first]);

    /// <summary>Number of finite slopes before a cut.</summary>
    public long CountBefore(SlopeCut cut) =>
        (FitsIntoLong(cut.Slope) ? Inversions<long>(cut) : Inversions<Int128>(cut))
        - (cut.IsAfter ? _identical : 0);

    private long Inversions<T>(SlopeCut cut)
        where T : struct, IBinaryInteger<T>
    {
        var order = new Counting<T> { WithEqual = cut.IsAfter };
        var rented = ArrayPool<T>.Shared.Rent(Count);
        var keys = rented.AsSpan(0, Count);
        FillKeys(cut.Slope, keys);
        MergeSort.Sort(keys, ref order);
        ArrayPool<T>.Shared.Return(rented);
        return order.Count;
    }

    /// <summary>
    /// The points in the order of y − s·x at a cut. Two points with a slope beyond the cut stand as by x, those with one before it the other way round; those with the same x always by y.
    /// </summary>
    /// <param name="cut">The cut; null for the end of all slopes.</param>
    /// <param name="isUpper">Which end, where there is no cut.</param>
    public int[] OrderAt(SlopeCut? cut, bool isUpper)
    {
        var reversed = cut?.IsAfter ?? isUpper;
        var order = reversed ? Reversed() : [.. Enumerable.Range(0, Count)];
        if (cut is { } at)
        {
            if (FitsIntoLong(at.Slope))
            {
                Sort<long>(order, at.Slope);
            }
            else
            {
                Sort<Int128>(order, at.Slope);
            }
        }

        return order;
    }

    private void Sort<T>(int[] order, ExactSlope slope)
        where T : struct, IBinaryInteger<T>
    {
        var (rented, rentedKeys) = (
            ArrayPool<Keyed<T>>.Shared.Rent(Count),
            ArrayPool<T>.Shared.Rent(Count)
        );
        var keyed = rented.AsSpan(0, Count);
        var keys = rentedKeys.AsSpan(0, Count);
        FillKeys(slope, keys);
        for (var i = 0; i < order.Length; i++)
        {
            keyed[i] = new(keys[order[i]], order[i]);
        }

        MergeSort.ByKey(keyed);
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = keyed[i].Item;
        }

        ArrayPool<Keyed<T>>.Shared.Return(rented);
        ArrayPool<T>.Shared.Return(rentedKeys);
    }

    /// <summary>From the largest x down, the points of one x still as they were.</summary>
    private int[] Reversed()
    {
        var reversed = new int[Count];
        var next = 0;
        for (var end = Count; end > 0; )
        {
            var start = end - 1;
            while (start > 0 && _x[start - 1] == _x[end - 1])
            {
                start--;
            }

            for (var i = start; i < end; i++)
            {
                reversed[next++] = i;
            }

            end = start;
        }

        return reversed;
    }

    private bool FitsIntoLong(ExactSlope slope)
    {
        var largestX = _x.Length == 0 ? 0 : _x[^1];
        return ((Int128)slope.Run * _largestY) + (Int128.Abs(slope.Rise) * largestX)
            < long.MaxValue;
    }

    /// <summary>run·y − rise·x: y − s·x times the run.</summary>
    private void FillKeys<T>(ExactSlope slope, Span<T> keys)
        where T : struct, IBinaryInteger<T>
    {
        var (run, rise) = (T.CreateChecked(slope.Run), T.CreateChecked(slope.Rise));
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = (run * T.CreateTruncating(_y[i])) - (rise * T.CreateTruncating(_x[i]));
        }
    }

    /// <summary>Counts the twos of keys of which the later is smaller, or as small.</summary>
    [StructLayout(LayoutKind.Auto)]
    private struct Counting<T> : IMergeOrder<T>
        where T : struct, IBinaryInteger<T>
    {
        public long Count { get; private set; }

        public bool WithEqual { get; init; }

        public readonly bool LaterFirst(T earlier, T later) =>
            later < earlier || (WithEqual && later == earlier);

        public void Passed(ReadOnlySpan<T> earlier, T later) => Count += earlier.Length;
    }
}

using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Finds slopes by rank among those between all twos of points with different x, exactly, without forming them all: in n log n time for each round and memory in proportion to n.
/// </summary>
/// <remarks>
/// Between two slopes lie as many others as the orders of y − s·x at the two have inversions, which a merge sort counts, reports or draws at random. From slopes drawn in an interval a narrower one
/// is bracketed around each rank and counted, until so few are left that they are listed and sorted (Cole, Salowe, Steiger and Szemerédi, SIAM J Comput 18 (1989) 792–810; drawn at random after
/// Dillencourt, Mount and Netanyahu, Int J Comput Geom Appl 2 (1992) 1–27; from memory). Chance changes the time, never the answer; all comparisons are of whole numbers.
/// </remarks>
internal sealed class SlopeSelection
{
    /// <summary>Slopes drawn in a round; the bracket is then less than a hundredth of the interval.</summary>
    private const int MostDrawn = 250_000;

    private const int FewestListed = 20_000;
    private const ulong Seed = 1983;

    private readonly long[] _x;
    private readonly long[] _y;
    private readonly long _identical;
    private readonly long _largestY;

    /// <summary>Points in any order; not written to.</summary>
    public SlopeSelection(ReadOnlySpan<long> x, ReadOnlySpan<long> y)
    {
        // Counted from the least, so that products stay small; slopes do not change.
        var order = Enumerable.Range(0, x.Length).ToArray();
        var (ownX, ownY) = (x.ToArray(), y.ToArray());
        Array.Sort(
            order,
            (a, b) => ownX[a] != ownX[b] ? ownX[a].CompareTo(ownX[b]) : ownY[a].CompareTo(ownY[b])
        );
        var (leastX, leastY) = (ownX.DefaultIfEmpty().Min(), ownY.DefaultIfEmpty().Min());
        _x = [.. order.Select(i => ownX[i] - leastX)];
        _y = [.. order.Select(i => ownY[i] - leastY)];
        _largestY = _y.DefaultIfEmpty().Max();
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

    /// <summary>Number of twos with different x.</summary>
    public long Finite { get; }

    /// <summary>Number of twos with the same x and different y.</summary>
    public long Vertical { get; }

    /// <summary>Number of finite slopes below a slope.</summary>
    public long CountBelow(ExactSlope slope) => Count(new Cut(slope, IsAfter: false));

    /// <summary>Number of finite slopes up to a slope.</summary>
    public long CountUpTo(ExactSlope slope) => Count(new Cut(slope, IsAfter: true));

    /// <summary>The slopes at ranks from 1 to <see cref="Finite"/>, in the order of the ranks given.</summary>
    public ImmutableArray<ExactSlope> AtRanks(params ReadOnlySpan<long> ranks)
    {
        var found = new Dictionary<long, ExactSlope>();
        Solve(
            new Interval(null, 0, null, Finite),
            [.. ranks.ToArray().Distinct().Order()],
            found,
            new SeededRandom(Seed)
        );
        var slopes = ImmutableArray.CreateBuilder<ExactSlope>(ranks.Length);
        foreach (var rank in ranks)
        {
            slopes.Add(found[rank]);
        }

        return slopes.MoveToImmutable();
    }

    /// <summary>A place in the order of slopes: just before or just after all that equal one.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Cut(ExactSlope Slope, bool IsAfter);

    /// <summary>The slopes between two cuts, with the numbers below either; no cut is the end of all.</summary>
    private sealed record Interval(Cut? From, long Below, Cut? To, long UpTo)
    {
        public long Size => UpTo - Below;
    }

    private void Solve(
        Interval interval,
        ImmutableArray<long> ranks,
        Dictionary<long, ExactSlope> found,
        SeededRandom random
    )
    {
        if (ranks.IsEmpty)
        {
            return;
        }

        if (
            interval
                is { From: { IsAfter: false, Slope: var a }, To: { IsAfter: true, Slope: var b } }
            && ExactSlope.Compare(a, b) == 0
        )
        {
            // Every slope of the interval is the same.
            foreach (var rank in ranks)
            {
                found[rank] = a;
            }

            return;
        }

        if (interval.Size <= Math.Max(_x.Length, FewestListed))
        {
            var all = Slopes(interval, null);
            foreach (var rank in ranks)
            {
                found[rank] = all[(int)(rank - interval.Below - 1)];
            }

            return;
        }

        var drawn = Slopes(interval, random);
        foreach (var group in Bracketed(interval, ranks, drawn))
        {
            foreach (var (part, inside) in Parts(interval, group.Low, group.High, group.Ranks))
            {
                if (part.Size > interval.Size / 2)
                {
                    // Many equal slopes: the one drawn in the middle is taken out, so that something is always gained.
                    var middle = drawn[Place(interval, inside[0], drawn.Length)];
                    foreach (
                        var (smaller, own) in Parts(
                            part,
                            new Cut(middle, IsAfter: false),
                            new Cut(middle, IsAfter: true),
                            inside
                        )
                    )
                    {
                        Solve(smaller, own, found, random);
                    }
                }
                else
                {
                    Solve(part, inside, found, random);
                }
            }
        }
    }

    private static int Place(Interval interval, long rank, int drawn) =>
        (int)Math.Clamp((double)(rank - interval.Below) / interval.Size * drawn, 0, drawn - 1);

    /// <summary>Around each rank the drawn slopes four standard errors off; ranks whose brackets meet share one.</summary>
    private static List<(Cut? Low, Cut? High, ImmutableArray<long> Ranks)> Bracketed(
        Interval interval,
        ImmutableArray<long> ranks,
        ExactSlope[] drawn
    )
    {
        var reach = (int)(2 * Math.Sqrt(drawn.Length)) + 1;
        var groups = new List<(int Low, int High, List<long> Ranks)>();
        foreach (var rank in ranks)
        {
            var place = Place(interval, rank, drawn.Length);
            if (groups.Count > 0 && groups[^1].High >= place - reach)
            {
                groups[^1].Ranks.Add(rank);
                groups[^1] = groups[^1] with { High = place + reach };
            }
            else
            {
                groups.Add((place - reach, place + reach, [rank]));
            }
        }

        return
        [
            .. groups.Select(group =>
                (
                    group.Low < 0 ? interval.From : new Cut(drawn[group.Low], IsAfter: false),
                    group.High >= drawn.Length
                        ? interval.To
                        : new Cut(drawn[group.High], IsAfter: true),
                    group.Ranks.ToImmutableArray()
                )
            ),
        ];
    }

    /// <summary>The interval cut in three, each part with the ranks that lie in it; parts without one are left out.</summary>
    private List<(Interval Part, ImmutableArray<long> Ranks)> Parts(
        Interval interval,
        Cut? low,
        Cut? high,
        ImmutableArray<long> ranks
    )
    {
        var (below, upTo) = (interval.Below, interval.UpTo);
        Parallel.Invoke(
            () => below = low == interval.From ? interval.Below : Count(low!.Value),
            () => upTo = high == interval.To ? interval.UpTo : Count(high!.Value)
        );
        var parts = new List<(Interval, ImmutableArray<long>)>();
        void Add(Interval part)
        {
            ImmutableArray<long> inside =
            [
                .. ranks.Where(rank => rank > part.Below && rank <= part.UpTo),
            ];
            if (!inside.IsEmpty)
            {
                parts.Add((part, inside));
            }
        }

        Add(interval with { To = low, UpTo = below });
        Add(new Interval(low, below, high, upTo));
        Add(interval with { From = high, Below = upTo });
        return parts;
    }

    private long Count(Cut cut) =>
        FitsIntoLong(cut.Slope)
            ? Inversions(Keys<long>(cut.Slope), cut.IsAfter) - (cut.IsAfter ? _identical : 0)
            : Inversions(Keys<Int128>(cut.Slope), cut.IsAfter) - (cut.IsAfter ? _identical : 0);

    /// <summary>The slopes of an interval in order: all of them, or as many as are drawn.</summary>
    private ExactSlope[] Slopes(Interval interval, SeededRandom? random)
    {
        var from = OrderAt(interval.From, isUpper: false);
        var to = OrderAt(interval.To, isUpper: true);
        var places = new int[to.Length];
        for (var i = 0; i < to.Length; i++)
        {
            places[to[i]] = i;
        }

        var sequence = Array.ConvertAll(from, point => places[point]);
        var slopes = new List<ExactSlope>();
        void Report(int left, int right)
        {
            var (a, b) = (to[left], to[right]);
            slopes.Add(ExactSlope.Finite(_x[b] - _x[a], _y[b] - _y[a]));
        }

        ReportedInversions.Visit(
            sequence,
            random is null ? null : Draws(interval.Size, random),
            Report
        );
        var sorted = slopes.ToArray();
        Array.Sort(sorted, ExactSlope.Compare);
        return sorted;
    }

    /// <summary>Numbers of the inversions to be reported, ascending, with repetition.</summary>
    private long[] Draws(long size, SeededRandom random)
    {
        var draws = new long[Math.Clamp(_x.Length, 1000, MostDrawn)];
        for (var i = 0; i < draws.Length; i++)
        {
            draws[i] = (long)(random.NextUInt64() % (ulong)size);
        }

        Array.Sort(draws);
        return draws;
    }

    /// <summary>
    /// The points in the order of y − s·x at a cut. Two points with a slope beyond the cut stand as by x, those with one before it the other way round; those with the same x always by y.
    /// </summary>
    private int[] OrderAt(Cut? cut, bool isUpper)
    {
        var order = Enumerable.Range(0, _x.Length).ToArray();
        if (cut is not { } at)
        {
            return isUpper ? Reversed(order) : order;
        }

        if (at.IsAfter)
        {
            order = Reversed(order);
        }

        if (FitsIntoLong(at.Slope))
        {
            StableOrder.Sort(Ordered(Keys<long>(at.Slope), order), order);
        }
        else
        {
            StableOrder.Sort(Ordered(Keys<Int128>(at.Slope), order), order);
        }

        return order;
    }

    private static T[] Ordered<T>(T[] keys, int[] order) =>
        Array.ConvertAll(order, point => keys[point]);

    /// <summary>From the largest x down, the points of one x still as they were.</summary>
    private int[] Reversed(int[] order)
    {
        var reversed = new int[order.Length];
        var next = 0;
        for (var end = order.Length; end > 0; )
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
    private T[] Keys<T>(ExactSlope slope)
        where T : struct, IBinaryInteger<T>
    {
        var (run, rise) = (T.CreateChecked(slope.Run), T.CreateChecked(slope.Rise));
        var keys = new T[_x.Length];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = (run * T.CreateTruncating(_y[i])) - (rise * T.CreateTruncating(_x[i]));
        }

        return keys;
    }

    private static long Inversions<T>(T[] keys, bool withEqual)
        where T : struct, IBinaryInteger<T>
    {
        var (from, to) = (keys, new T[keys.Length]);
        var count = 0L;
        for (var width = 1; width < keys.Length; width *= 2)
        {
            for (var start = 0; start < keys.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, keys.Length);
                var end = Math.Min(middle + width, keys.Length);
                var (left, right) = (start, middle);
                for (var i = start; i < end; i++)
                {
                    var takesRight =
                        right < end
                        && (
                            left == middle
                            || from[right] < from[left]
                            || (withEqual && from[right] == from[left])
                        );
                    if (takesRight)
                    {
                        count += middle - left;
                        to[i] = from[right++];
                    }
                    else
                    {
                        to[i] = from[left++];
                    }
                }
            }

            (from, to) = (to, from);
        }

        return count;
    }
}

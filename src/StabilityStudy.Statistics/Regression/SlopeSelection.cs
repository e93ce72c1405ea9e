using System.Collections.Concurrent;
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

    private readonly PointsByX _points;

    // Drawn once, since every search begins with all.
    private ExactSlope[]? _drawnOfAll;

    /// <summary>The slopes between these pairs.</summary>
    public SlopeSelection(ExactPairs pairs) => _points = new PointsByX(pairs);

    /// <summary>Number of twos with different x.</summary>
    public long Finite => _points.Finite;

    /// <summary>Number of twos with the same x and different y.</summary>
    public long Vertical => _points.Vertical;

    /// <summary>Number of finite slopes below a slope.</summary>
    public long CountBelow(ExactSlope slope) =>
        _points.CountBefore(new SlopeCut(slope, IsAfter: false));

    /// <summary>Number of finite slopes up to a slope.</summary>
    public long CountUpTo(ExactSlope slope) =>
        _points.CountBefore(new SlopeCut(slope, IsAfter: true));

    /// <summary>The slopes at ranks from 1 to <see cref="Finite"/>, in the order of the ranks given.</summary>
    public ImmutableArray<ExactSlope> AtRanks(params ReadOnlySpan<long> ranks)
    {
        var found = new ConcurrentDictionary<long, ExactSlope>();
        Solve(new Interval(null, 0, null, Finite), [.. ranks.ToArray().Distinct().Order()], found);
        var slopes = ImmutableArray.CreateBuilder<ExactSlope>(ranks.Length);
        foreach (var rank in ranks)
        {
            slopes.Add(found[rank]);
        }

        return slopes.MoveToImmutable();
    }

    /// <summary>The slopes between two cuts, with the numbers below either; no cut is the end of all.</summary>
    private sealed record Interval(SlopeCut? From, long Below, SlopeCut? To, long UpTo)
    {
        public long Size => UpTo - Below;
    }

    private void Solve(
        Interval interval,
        ImmutableArray<long> ranks,
        ConcurrentDictionary<long, ExactSlope> found
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

        if (interval.Size <= Math.Max(_points.Count, FewestListed))
        {
            var all = Slopes(interval, null);
            foreach (var rank in ranks)
            {
                found[rank] = all[(int)(rank - interval.Below - 1)];
            }

            return;
        }

        var drawn = interval is { From: null, To: null }
            ? LazyInitializer.EnsureInitialized(ref _drawnOfAll, () => Drawn(interval))
            : Drawn(interval);
        Parallel.ForEach(
            Bracketed(interval, ranks, drawn),
            group =>
            {
                foreach (var (part, inside) in Parts(interval, group.Low, group.High, group.Ranks))
                {
                    Narrow(interval, part, inside, drawn, found);
                }
            }
        );
    }

    private void Narrow(
        Interval interval,
        Interval part,
        ImmutableArray<long> ranks,
        ExactSlope[] drawn,
        ConcurrentDictionary<long, ExactSlope> found
    )
    {
        if (part.Size <= interval.Size / 2)
        {
            Solve(part, ranks, found);
            return;
        }

        // Many equal slopes: the one drawn in the middle is taken out, so that something is always gained.
        var middle = drawn[Place(interval, ranks[0], drawn.Length)];
        var (before, after) = (
            new SlopeCut(middle, IsAfter: false),
            new SlopeCut(middle, IsAfter: true)
        );
        foreach (var (smaller, own) in Parts(part, before, after, ranks))
        {
            Solve(smaller, own, found);
        }
    }

    private static int Place(Interval interval, long rank, int drawn) =>
        (int)Math.Clamp((double)(rank - interval.Below) / interval.Size * drawn, 0, drawn - 1);

    /// <summary>Around each rank the drawn slopes four standard errors off; ranks whose brackets meet share one.</summary>
    private static List<(SlopeCut? Low, SlopeCut? High, ImmutableArray<long> Ranks)> Bracketed(
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
                    group.Low < 0 ? interval.From : new SlopeCut(drawn[group.Low], IsAfter: false),
                    group.High >= drawn.Length
                        ? interval.To
                        : new SlopeCut(drawn[group.High], IsAfter: true),
                    group.Ranks.ToImmutableArray()
                )
            ),
        ];
    }

    /// <summary>The interval cut in three, each part with the ranks that lie in it; parts without one are left out.</summary>
    private List<(Interval Part, ImmutableArray<long> Ranks)> Parts(
        Interval interval,
        SlopeCut? low,
        SlopeCut? high,
        ImmutableArray<long> ranks
    )
    {
        var (below, upTo) = (interval.Below, interval.UpTo);
        Parallel.Invoke(
            () => below = low == interval.From ? interval.Below : _points.CountBefore(low!.Value),
            () => upTo = high == interval.To ? interval.UpTo : _points.CountBefore(high!.Value)
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

    private ExactSlope[] Drawn(Interval interval) => Slopes(interval, new SeededRandom(Seed));

    /// <summary>The slopes of an interval in order: all of them, or as many as are drawn.</summary>
    private ExactSlope[] Slopes(Interval interval, SeededRandom? random)
    {
        int[] from = [];
        int[] to = [];
        Parallel.Invoke(
            () => from = _points.OrderAt(interval.From, isUpper: false),
            () => to = _points.OrderAt(interval.To, isUpper: true)
        );
        var places = new int[to.Length];
        for (var i = 0; i < to.Length; i++)
        {
            places[to[i]] = i;
        }

        var draws = random is null ? null : Draws(interval.Size, random);
        var slopes = new List<ExactSlope>(draws?.Length ?? (int)interval.Size);
        var reporting = new ReportedInversions(
            draws,
            (left, right) => slopes.Add(_points.Slope(to[left], to[right]))
        );
        MergeSort.Sort(Array.ConvertAll(from, point => places[point]).AsSpan(), ref reporting);
        var sorted = slopes.ToArray();
        Array.Sort(sorted, ExactSlope.Compare);
        return sorted;
    }

    /// <summary>Numbers of the inversions to be reported, ascending, with repetition.</summary>
    private long[] Draws(long size, SeededRandom random)
    {
        var draws = new long[Math.Clamp(_points.Count, 1000, MostDrawn)];
        for (var i = 0; i < draws.Length; i++)
        {
            draws[i] = (long)(random.NextUInt64() % (ulong)size);
        }

        Array.Sort(draws);
        return draws;
    }
}

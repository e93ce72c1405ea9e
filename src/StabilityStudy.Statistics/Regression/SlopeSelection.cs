using System.Collections.Concurrent;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Finds slopes by rank among those between all twos of points with different x, exactly, without forming them all: in n log n time for each round and memory in proportion to n.
/// </summary>
/// <remarks>
/// Between two slopes lie as many others as the orders of y − s·x at the two have inversions, which a merge sort counts, reports or draws at random. From slopes drawn in an interval a narrower one
/// is bracketed around each rank and counted, until so few are left that they are listed and sorted (Cole, Salowe, Steiger and Szemerédi, SIAM J Comput 18 (1989) 792–810; drawn at random after
/// Dillencourt, Mount and Netanyahu, Int J Comput Geom Appl 2 (1992) 1–27; from memory). Within a bracket slopes lie evenly enough for the next one to be interpolated; where that gains little,
/// because many are equal, it is drawn. Chance changes the time, never the answer; all comparisons are of whole numbers.
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

    // Methods ask for the same ranks, or for some close to each other.
    private readonly ConcurrentQueue<(Interval Interval, ExactSlope[] Slopes)> _listed = new();

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
        var searched = new SortedSet<long>();
        foreach (var rank in ranks)
        {
            if (Listed(rank) is { } known)
            {
                found[rank] = known;
            }
            else
            {
                searched.Add(rank);
            }
        }

        Solve(new Interval(null, 0, null, Finite), [.. searched], found);
        var slopes = ImmutableArray.CreateBuilder<ExactSlope>(ranks.Length);
        foreach (var rank in ranks)
        {
            slopes.Add(found[rank]);
        }

        return slopes.MoveToImmutable();
    }

    /// <summary>The slope at a rank, where those around it were listed.</summary>
    private ExactSlope? Listed(long rank)
    {
        foreach (var (interval, slopes) in _listed)
        {
            if (rank > interval.Below && rank <= interval.UpTo)
            {
                return slopes[rank - interval.Below - 1];
            }
        }

        return null;
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

        if (interval.Size <= MostListed)
        {
            var all = Slopes(interval, null);
            _listed.Enqueue((interval, all));
            foreach (var rank in ranks)
            {
                found[rank] = all[rank - interval.Below - 1];
            }

            return;
        }

        Parallel.ForEach(
            interval is { From: { } from, To: { } to }
                ? Interpolated(interval, from.Slope, to.Slope, ranks)
                : Bracketed(interval, ranks, DrawnOf(interval)),
            group =>
            {
                foreach (var (part, inside) in Parts(interval, group.Low, group.High, group.Ranks))
                {
                    Narrow(interval, part, inside, found);
                }
            }
        );
    }

    private int MostListed => Math.Max(_points.Count, FewestListed);

    private void Narrow(
        Interval interval,
        Interval part,
        ImmutableArray<long> ranks,
        ConcurrentDictionary<long, ExactSlope> found
    )
    {
        if (part.Size <= interval.Size / 2)
        {
            Solve(part, ranks, found);
            return;
        }

        // Many equal slopes: the one drawn in the middle is taken out, so that something is always gained.
        var drawn = DrawnOf(part);
        var middle = drawn[Place(part, ranks[0], drawn.Length)];
        var (before, after) = (
            new SlopeCut(middle, IsAfter: false),
            new SlopeCut(middle, IsAfter: true)
        );
        foreach (var (smaller, own) in Parts(part, before, after, ranks))
        {
            Solve(smaller, own, found);
        }
    }

    private ExactSlope[] DrawnOf(Interval interval) =>
        interval is { From: null, To: null }
            ? LazyInitializer.EnsureInitialized(ref _drawnOfAll, () => Drawn(interval))
            : Drawn(interval);

    /// <summary>
    /// Around each rank the slopes between which half as many lie as can be listed, were all of the interval spread evenly; ranks whose brackets meet share one.
    /// </summary>
    private List<Bracket> Interpolated(
        Interval interval,
        ExactSlope from,
        ExactSlope to,
        ImmutableArray<long> ranks
    )
    {
        SlopeCut? CutAt(long rank, SlopeCut? end)
        {
            var share = (double)(rank - interval.Below) / interval.Size;
            var between = _points.Near(from.Value + (share * (to.Value - from.Value)));
            return
                between is { } slope
                && ExactSlope.Compare(from, slope) < 0
                && ExactSlope.Compare(slope, to) < 0
                ? new SlopeCut(slope, IsAfter: false)
                : end;
        }

        var reach = MostListed / 4;
        return
        [
            .. Together(ranks, rank => rank, reach)
                .Select(group => new Bracket(
                    CutAt(group.Low, interval.From),
                    CutAt(group.High, interval.To),
                    group.Ranks
                )),
        ];
    }

    private static int Place(Interval interval, long rank, int drawn) =>
        (int)Math.Clamp((double)(rank - interval.Below) / interval.Size * drawn, 0, drawn - 1);

    /// <summary>Around each rank the drawn slopes four standard errors off; ranks whose brackets meet share one.</summary>
    private static List<Bracket> Bracketed(
        Interval interval,
        ImmutableArray<long> ranks,
        ExactSlope[] drawn
    )
    {
        var reach = (int)(2 * Math.Sqrt(drawn.Length)) + 1;
        return
        [
            .. Together(ranks, rank => Place(interval, rank, drawn.Length), reach)
                .Select(group => new Bracket(
                    group.Low < 0 ? interval.From : new SlopeCut(drawn[group.Low], IsAfter: false),
                    group.High >= drawn.Length
                        ? interval.To
                        : new SlopeCut(drawn[group.High], IsAfter: true),
                    group.Ranks
                )),
        ];
    }

    /// <summary>Ranks with the places that reach so far on either side; those that meet stand together.</summary>
    private static List<(long Low, long High, ImmutableArray<long> Ranks)> Together(
        ImmutableArray<long> ranks,
        Func<long, long> placeOf,
        int reach
    )
    {
        var groups = new List<(long Low, long High, ImmutableArray<long> Ranks)>();
        foreach (var rank in ranks)
        {
            var place = placeOf(rank);
            if (groups.Count > 0 && groups[^1].High >= place - reach)
            {
                groups[^1] = groups[^1] with
                {
                    High = place + reach,
                    Ranks = groups[^1].Ranks.Add(rank),
                };
            }
            else
            {
                groups.Add((place - reach, place + reach, [rank]));
            }
        }

        return groups;
    }

    /// <summary>Two cuts between which the slopes of some ranks are likely to lie.</summary>
    private sealed record Bracket(SlopeCut? Low, SlopeCut? High, ImmutableArray<long> Ranks);

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
        return ExactSlope.InOrder(slopes);
    }

    /// <summary>Numbers of the inversions to be reported, ascending: one by chance in each of equal parts.</summary>
    private long[] Draws(long size, SeededRandom random)
    {
        var draws = new long[Math.Clamp(_points.Count, 1000, MostDrawn)];
        for (var i = 0; i < draws.Length; i++)
        {
            var place = (i + random.NextDouble()) / draws.Length;
            draws[i] = Math.Min((long)(place * size), size - 1);
        }

        return draws;
    }
}

using System.Collections.Concurrent;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// Finds slopes by rank among those between all twos of points with different x, exactly, without forming them all: in n log n time for each round and memory in proportion to n.
/// </summary>
/// <remarks>
/// Between two slopes lie as many others as the orders of y − s·x at the two have inversions, which a merge sort counts, reports or draws at random. From slopes drawn in an interval a narrower one
/// is bracketed around each rank and counted, until so few are left that they are listed and sorted (Cole, Salowe, Steiger and Szemerédi, SIAM J Comput 18 (1989) 792–810; drawn at random after
/// Dillencourt, Mount and Netanyahu, Int J Comput Geom Appl 2 (1992) 1–27; from memory). Those drawn serve again where they bracket a rank closely enough for listing, and for the ranks of the next
/// method. Chance changes the time, never the answer; all comparisons are of whole numbers.
/// </remarks>
internal sealed class SlopeSelection
{
    /// <summary>Slopes drawn in a round; the bracket is then less than a hundredth of the interval.</summary>
    private const int MostDrawn = 250_000;

    private const int FewestListed = 20_000;
    private const ulong Seed = 1983;

    private readonly PointsByX _points;

    // The first bracket in which slopes were drawn; the ranks of another method mostly lie in it too.
    private SlopeSample? _widest;

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
        ImmutableArray<long> wanted = [.. ranks.ToArray().Distinct().Order()];
        if (_widest is { } known && known.Holds(wanted))
        {
            Narrow(known, wanted, found);
        }
        else
        {
            Solve(new SlopeInterval(null, 0, null, Finite), wanted, null, found);
        }

        var slopes = ImmutableArray.CreateBuilder<ExactSlope>(ranks.Length);
        foreach (var rank in ranks)
        {
            slopes.Add(found[rank]);
        }

        return slopes.MoveToImmutable();
    }

    /// <param name="interval">Where the ranks lie.</param>
    /// <param name="ranks">The ranks, ascending.</param>
    /// <param name="around">Slopes drawn in an interval around; null for none.</param>
    /// <param name="found">Where the slopes go.</param>
    private void Solve(
        SlopeInterval interval,
        ImmutableArray<long> ranks,
        SlopeSample? around,
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

        var listed = Math.Max(_points.Count, FewestListed);
        if (interval.Size <= listed)
        {
            var all = Slopes(interval, null);
            foreach (var rank in ranks)
            {
                found[rank] = all[(int)(rank - interval.Below - 1)];
            }

            return;
        }

        var sample =
            around?.Inside(interval) is { Count: > 0 } inside && inside.Bracketed <= listed
                ? inside
                : new SlopeSample(interval, Slopes(interval, new SeededRandom(Seed)));
        if (interval is { From: not null, To: not null } && _widest is null)
        {
            _widest = sample;
        }

        Narrow(sample, ranks, found);
    }

    private void Narrow(
        SlopeSample sample,
        ImmutableArray<long> ranks,
        ConcurrentDictionary<long, ExactSlope> found
    ) =>
        Parallel.ForEach(
            Bracketed(sample, ranks),
            group =>
            {
                foreach (
                    var (part, own) in Parts(sample.Interval, group.Low, group.High, group.Ranks)
                )
                {
                    if (part.Size <= sample.Interval.Size / 2)
                    {
                        Solve(part, own, sample, found);
                    }
                    else
                    {
                        WithoutMiddle(sample, part, own, found);
                    }
                }
            }
        );

    /// <summary>Many equal slopes: the one drawn in the middle is taken out, so that something is always gained.</summary>
    private void WithoutMiddle(
        SlopeSample sample,
        SlopeInterval part,
        ImmutableArray<long> ranks,
        ConcurrentDictionary<long, ExactSlope> found
    )
    {
        var middle = sample[sample.PlaceOf(ranks[0])];
        var (before, after) = (
            new SlopeCut(middle, IsAfter: false),
            new SlopeCut(middle, IsAfter: true)
        );
        foreach (var (smaller, own) in Parts(part, before, after, ranks))
        {
            Solve(smaller, own, null, found);
        }
    }

    /// <summary>Around each rank the drawn slopes within reach; ranks whose brackets meet share one.</summary>
    private static List<(SlopeCut? Low, SlopeCut? High, ImmutableArray<long> Ranks)> Bracketed(
        SlopeSample sample,
        ImmutableArray<long> ranks
    )
    {
        var groups = new List<(long Low, long High, List<long> Ranks)>();
        foreach (var rank in ranks)
        {
            var place = sample.PlaceOf(rank);
            if (groups.Count > 0 && groups[^1].High >= place - sample.Reach)
            {
                groups[^1].Ranks.Add(rank);
                groups[^1] = groups[^1] with { High = place + sample.Reach };
            }
            else
            {
                groups.Add((place - sample.Reach, place + sample.Reach, [rank]));
            }
        }

        return
        [
            .. groups.Select(group =>
                (
                    group.Low < 0
                        ? sample.Interval.From
                        : new SlopeCut(sample[group.Low], IsAfter: false),
                    group.High >= sample.Count
                        ? sample.Interval.To
                        : new SlopeCut(sample[group.High], IsAfter: true),
                    group.Ranks.ToImmutableArray()
                )
            ),
        ];
    }

    /// <summary>The interval cut in three, each part with the ranks that lie in it; parts without one are left out.</summary>
    private List<(SlopeInterval Part, ImmutableArray<long> Ranks)> Parts(
        SlopeInterval interval,
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
        var parts = new List<(SlopeInterval, ImmutableArray<long>)>();
        void Add(SlopeInterval part)
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
        Add(new SlopeInterval(low, below, high, upTo));
        Add(interval with { From = high, Below = upTo });
        return parts;
    }

    /// <summary>The slopes of an interval in order: all of them, or as many as are drawn.</summary>
    private ExactSlope[] Slopes(SlopeInterval interval, SeededRandom? random)
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

using System.Buffers;

namespace StabilityStudy.Statistics.Location;

/// <summary>Which values share an error: those of one collection day, one run, one person.</summary>
/// <param name="source">What the clusters are.</param>
/// <param name="cluster">The cluster of each value, any whole numbers.</param>
public sealed class Clustering(IntervalSource source, ImmutableArray<int> cluster)
{
    // Found at the first question: one clustering is asked about many sets of values, in a simulation and in every reading.
    private Parts? _parts;
    private Crossing? _crossing;

    /// <summary>What the clusters are.</summary>
    public IntervalSource Source { get; } = source;

    /// <summary>The cluster of each value, any whole numbers.</summary>
    public ImmutableArray<int> Cluster { get; } = cluster;

    /// <summary>Number of clusters.</summary>
    public int Count => Parted.Starts.Length - 1;

    private Parts Parted => LazyInitializer.EnsureInitialized(ref _parts, () => Parts.Of(Cluster));

    /// <summary>The same source of errors for other values.</summary>
    /// <param name="of">The cluster of each of them.</param>
    public Clustering With(ImmutableArray<int> of) => new(Source, of);

    /// <summary>The values of each cluster, in the order of its first value, so that clusterings that part values in the same way give the same sums to the last digit.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    internal ClusterMembers Members(ReadOnlySpan<double> values)
    {
        RequireOneFor(values);
        var parts = Parted;
        var members = ArrayPool<double>.Shared.Rent(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            members[parts.Place[i]] = values[i];
        }

        return new(members, parts.Starts);
    }

    /// <summary>Whether each value has a cluster.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    internal void RequireOneFor(ReadOnlySpan<double> values)
    {
        if (values.Length != Cluster.Length)
        {
            throw new ArgumentException("Each value needs one cluster.", nameof(values));
        }
    }

    /// <summary>The mean of each cluster's values, in the order of its first value.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    internal double[] MeansOf(ReadOnlySpan<double> values)
    {
        using var members = Members(values);
        return members.Means();
    }

    /// <summary>Whether another clustering parts the values in the same way, whatever its numbers.</summary>
    internal bool PartsAs(Clustering other) =>
        other.Cluster.Length == Cluster.Length
        && other.Count == Count
        && CrossedWith(other).Count == Count;

    /// <summary>The clusters in which a value shares both this one's and another's.</summary>
    internal Clustering CrossedWith(Clustering other)
    {
        if (_crossing is { } known && known.Other == other)
        {
            return known.Crossed;
        }

        var numbers = new Numbering<(int, int)>();
        var crossed = ImmutableArray.CreateBuilder<int>(Cluster.Length);
        for (var i = 0; i < Cluster.Length; i++)
        {
            crossed.Add(numbers.Of((Cluster[i], other.Cluster[i])));
        }

        var found = new Clustering(IntervalSource.CrossedRuns, crossed.MoveToImmutable());
        _crossing = new(other, found);
        return found;
    }

    private sealed record Crossing(Clustering Other, Clustering Crossed);

    /// <summary>Where the values go when those of a cluster stand together.</summary>
    /// <param name="Place">The place of each value.</param>
    /// <param name="Starts">Where each cluster begins, and the end.</param>
    private sealed record Parts(int[] Place, int[] Starts)
    {
        public static Parts Of(ImmutableArray<int> cluster)
        {
            var numberOf = NumbersOf(cluster);
            var place = new int[cluster.Length];
            var counts = new List<int>();
            for (var i = 0; i < place.Length; i++)
            {
                place[i] = numberOf(cluster[i]);
                if (place[i] == counts.Count)
                {
                    counts.Add(0);
                }

                counts[place[i]]++;
            }

            var starts = new int[counts.Count + 1];
            for (var i = 0; i < counts.Count; i++)
            {
                starts[i + 1] = starts[i] + counts[i];
                counts[i] = starts[i];
            }

            for (var i = 0; i < place.Length; i++)
            {
                place[i] = counts[place[i]]++;
            }

            return new(place, starts);
        }

        /// <summary>Clusters are mostly numbered from 0 on already; then a table of as many does.</summary>
        private static Func<int, int> NumbersOf(ImmutableArray<int> cluster) =>
            cluster.Any(number => number < 0 || number >= cluster.Length)
                ? new Numbering<int>().Of
                : new WholeNumbering(cluster.Length).Of;
    }
}

/// <summary>Values by their clusters, in a rented array until it is given back.</summary>
/// <param name="rented">The values, those of a cluster together.</param>
/// <param name="starts">Where each cluster begins, and the end.</param>
internal readonly ref struct ClusterMembers(double[] rented, ReadOnlySpan<int> starts)
{
    private readonly double[] _rented = rented;
    private readonly ReadOnlySpan<int> _starts = starts;

    /// <summary>Number of clusters.</summary>
    public int Count => _starts.Length - 1;

    /// <summary>The values of a cluster, in their order.</summary>
    public ReadOnlySpan<double> this[int cluster] =>
        _rented.AsSpan(_starts[cluster].._starts[cluster + 1]);

    /// <summary>The mean of each cluster.</summary>
    public double[] Means()
    {
        var means = new double[Count];
        for (var i = 0; i < means.Length; i++)
        {
            means[i] = Moments.MeanOf(this[i]);
        }

        return means;
    }

    /// <summary>Gives the array back.</summary>
    public void Dispose() => ArrayPool<double>.Shared.Return(_rented);
}

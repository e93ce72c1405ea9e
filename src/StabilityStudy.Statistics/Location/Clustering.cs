namespace StabilityStudy.Statistics.Location;

/// <summary>Which values share an error: those of one collection day, one run, one person.</summary>
/// <param name="Source">What the clusters are.</param>
/// <param name="Cluster">The cluster of each value, any whole numbers.</param>
public sealed record Clustering(IntervalSource Source, ImmutableArray<int> Cluster)
{
    /// <summary>The values of each cluster, in the order of its first value, so that clusterings that part values in the same way give the same sums to the last digit.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    internal IReadOnlyList<double[]> Members(ReadOnlySpan<double> values)
    {
        if (values.Length != Cluster.Length)
        {
            throw new ArgumentException("Each value needs one cluster.", nameof(values));
        }

        var members = new OrderedDictionary<int, List<double>>();
        for (var i = 0; i < values.Length; i++)
        {
            if (!members.TryGetValue(Cluster[i], out var list))
            {
                list = [];
                members.Add(Cluster[i], list);
            }

            list.Add(values[i]);
        }

        return [.. members.Values.Select(list => list.ToArray())];
    }

    /// <summary>Whether another clustering parts the values in the same way, whatever its numbers.</summary>
    internal bool PartsAs(Clustering other)
    {
        var clusters = Cluster.Distinct().Count();
        return other.Cluster.Length == Cluster.Length
            && other.Cluster.Distinct().Count() == clusters
            && CrossedWith(other).Cluster.Distinct().Count() == clusters;
    }

    /// <summary>The clusters in which a value shares both this one's and another's.</summary>
    internal Clustering CrossedWith(Clustering other)
    {
        var numbers = new Dictionary<(int, int), int>();
        var crossed = ImmutableArray.CreateBuilder<int>(Cluster.Length);
        for (var i = 0; i < Cluster.Length; i++)
        {
            var both = (Cluster[i], other.Cluster[i]);
            numbers.TryAdd(both, numbers.Count);
            crossed.Add(numbers[both]);
        }

        return new(IntervalSource.CrossedRuns, crossed.MoveToImmutable());
    }
}

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

        // Counted first and then filled: this is asked many times in a simulation.
        var numbers = new Dictionary<int, int>(values.Length);
        var number = new int[values.Length];
        var counts = new int[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            if (!numbers.TryGetValue(Cluster[i], out number[i]))
            {
                number[i] = numbers.Count;
                numbers.Add(Cluster[i], number[i]);
            }

            counts[number[i]]++;
        }

        var members = new double[numbers.Count][];
        for (var i = 0; i < members.Length; i++)
        {
            members[i] = new double[counts[i]];
        }

        for (var i = values.Length - 1; i >= 0; i--)
        {
            members[number[i]][--counts[number[i]]] = values[i];
        }

        return members;
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

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Estimates;

/// <summary>In which ways pairs share an error: collection day, run of the baseline, run of the delayed result, person.</summary>
/// <param name="Clusterings">One for each way, a cluster a pair.</param>
/// <param name="Counts">How many days and runs there are; it stays when pairs are left out to see what they do.</param>
internal sealed record SharedErrors(ImmutableArray<Clustering> Clusterings, ClusterCounts Counts)
{
    /// <summary>Which pairs were collected on one day.</summary>
    public Clustering Days => Of(IntervalSource.CollectionDays);

    /// <summary>Which pairs had their baseline from one run.</summary>
    public Clustering BaselineRuns => Of(IntervalSource.BaselineRuns);

    /// <summary>Which pairs had their delayed result from one run.</summary>
    public Clustering DelayedRuns => Of(IntervalSource.DelayedRuns);

    /// <summary>Those of pairs, in their order.</summary>
    public static SharedErrors Of(ImmutableArray<PairRecord> pairs)
    {
        var (days, baseline, delayed) = (
            DaysOf(pairs),
            BaselineRunsOf(pairs),
            DelayedRunsOf(pairs)
        );
        return new(
            [days, baseline, delayed, new(IntervalSource.Persons, PersonsOf(pairs))],
            new ClusterCounts(days.Count, baseline.Count, delayed.Count)
        );
    }

    /// <summary>In which ways the baselines of pairs share an error.</summary>
    public static ImmutableArray<Clustering> OfBaselines(ImmutableArray<PairRecord> pairs) =>
        [DaysOf(pairs), BaselineRunsOf(pairs), new(IntervalSource.Persons, PersonsOf(pairs))];

    /// <summary>How many days and runs pairs come from, counted no further than to so many.</summary>
    public static ClusterCounts CountsUpTo(int enough, ImmutableArray<PairRecord> pairs) =>
        new(
            Counted(enough, pairs, pair => pair.CollectionDay),
            Counted(enough, pairs, RunOf(pairs, pair => pair.Baseline)),
            Counted(enough, pairs, RunOf(pairs, pair => pair.Delayed))
        );

    private static int Counted<T>(
        int enough,
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, T> key
    )
    {
        var different = new HashSet<T>();
        for (var i = 0; i < pairs.Length && different.Count < enough; i++)
        {
            different.Add(key(pairs[i]));
        }

        return different.Count;
    }

    /// <summary>The person of each pair, numbered from 0 on.</summary>
    public static ImmutableArray<int> PersonsOf(ImmutableArray<PairRecord> pairs) =>
        Numbered(pairs, pair => pair.Subject, new Numbering<string>(pairs.Length));

    private static Clustering DaysOf(ImmutableArray<PairRecord> pairs) =>
        new(
            IntervalSource.CollectionDays,
            Numbered(pairs, pair => pair.CollectionDay, new Numbering<DateOnly>())
        );

    private static Clustering BaselineRunsOf(ImmutableArray<PairRecord> pairs) =>
        new(
            IntervalSource.BaselineRuns,
            Numbered(pairs, RunOf(pairs, pair => pair.Baseline), new Numbering<RunKey>())
        );

    /// <summary>Which pairs had their delayed result from one run.</summary>
    public static Clustering DelayedRunsOf(ImmutableArray<PairRecord> pairs) =>
        new(
            IntervalSource.DelayedRuns,
            Numbered(pairs, RunOf(pairs, pair => pair.Delayed), new Numbering<RunKey>())
        );

    /// <summary>Without one pair.</summary>
    public SharedErrors Without(int index) =>
        this with
        {
            Clusterings = [.. Clusterings.Select(item => item.With(item.Cluster.RemoveAt(index)))],
        };

    private Clustering Of(IntervalSource source) =>
        Clusterings.Single(item => item.Source == source);

    private static ImmutableArray<int> Numbered<T>(
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, T> key,
        Numbering<T> numbers
    )
        where T : notnull, IEquatable<T>
    {
        var numbered = ImmutableArray.CreateBuilder<int>(pairs.Length);
        var before = (Key: default(T), Number: 0);
        foreach (var pair in pairs)
        {
            // Pairs mostly follow others of their day and run.
            var own = key(pair);
            var isBefore = numbered.Count > 0 && own.Equals(before.Key);
            before = isBefore ? before : (own, numbers.Of(own));
            numbered.Add(before.Number);
        }

        return numbered.MoveToImmutable();
    }

    /// <summary>
    /// The run of each result. Results without a run code share one when they come from one instrument on one day, so that a code left out
    /// never makes runs more numerous. Averaged results of several runs join these runs into one.
    /// </summary>
    private static Func<PairRecord, RunKey> RunOf(
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, Measurement?> resultOf
    )
    {
        var joined = new Dictionary<string, string>(StringComparer.Ordinal);
        string Root(string run)
        {
            while (joined.TryGetValue(run, out var other))
            {
                run = other;
            }

            return run;
        }

        foreach (var pair in pairs)
        {
            if (resultOf(pair) is { ReplicateRuns: { IsEmpty: false } several })
            {
                var runs = several.Select(Root).Distinct().ToImmutableArray();
                foreach (var run in runs.Skip(1))
                {
                    joined[run] = runs[0];
                }
            }
        }

        return pair =>
        {
            var result = resultOf(pair);
            return result?.FirstRun is { } run
                ? new RunKey(joined.Count == 0 ? run : Root(run), null, "")
                : new RunKey(null, result?.TestedAt?.Date, result?.Instrument ?? "");
        };
    }
}

/// <summary>What tells runs apart: their code, or without one the day and the instrument.</summary>
internal readonly record struct RunKey(string? Code, DateTime? Day, string Instrument)
{
    /// <summary>Of the code alone where there is one: there are as many keys as results.</summary>
    public override int GetHashCode() =>
        Code?.GetHashCode(StringComparison.Ordinal) ?? HashCode.Combine(Day, Instrument);
}

/// <summary>How many collection days and runs pairs come from.</summary>
/// <param name="Days">Collection days.</param>
/// <param name="BaselineRuns">Runs in which baselines were tested.</param>
/// <param name="DelayedRuns">Runs in which delayed results were tested.</param>
internal sealed record ClusterCounts(int Days, int BaselineRuns, int DelayedRuns);

using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Planning;

/// <summary>On which day each specimen is collected, and in which run each of its results is tested; days and runs are counted from 0.</summary>
public sealed record SupposedConduct
{
    private SupposedConduct(
        ImmutableArray<int> day,
        ImmutableArray<int> baselineRun,
        ImmutableArray<int> delayedRun
    ) => (Day, BaselineRun, DelayedRun) = (day, baselineRun, delayedRun);

    /// <summary>Collection day of each specimen.</summary>
    public ImmutableArray<int> Day { get; }

    /// <summary>Run of each baseline.</summary>
    public ImmutableArray<int> BaselineRun { get; }

    /// <summary>Run of each delayed result.</summary>
    public ImmutableArray<int> DelayedRun { get; }

    /// <summary>Number of specimens with both results.</summary>
    public int Specimens => Day.Length;

    /// <summary>Number of specimens of each collection day.</summary>
    public ImmutableArray<int> SpecimensOfDays =>
        [.. Day.CountBy(day => day).Select(day => day.Value)];

    /// <summary>A planned collection: specimens spread evenly over days, each day with one run for baselines and another for delayed results.</summary>
    /// <param name="specimens">Number of specimens, from 1 to 10,000.</param>
    /// <param name="days">Number of collection days, from 1 to the number of specimens.</param>
    /// <exception cref="ArgumentException">A number is outside its range.</exception>
    public static SupposedConduct Even(int specimens, int days)
    {
        if (specimens is < 1 or > LargestSample.Simulation || days < 1 || days > specimens)
        {
            throw new ArgumentException(
                "There are from 1 to 10,000 specimens on at most as many days.",
                nameof(specimens)
            );
        }

        ImmutableArray<int> day = [.. Enumerable.Range(0, specimens).Select(i => i % days)];
        return new(day, day, day);
    }

    /// <summary>A collection as it was.</summary>
    internal static SupposedConduct Of(SharedErrors errors) =>
        new(errors.Days.Cluster, errors.BaselineRuns.Cluster, errors.DelayedRuns.Cluster);
}

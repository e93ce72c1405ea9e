using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>On which day each specimen was collected, and in which runs it was tested.</summary>
/// <param name="Name">Name in the table.</param>
/// <param name="Day">Day of each specimen, counted from 0.</param>
/// <param name="BaselineRun">Run of each baseline, counted from 0.</param>
/// <param name="DelayedRun">Run of each delayed result, counted from 0.</param>
/// <param name="OneRun">Whether each specimen's two results came from one run.</param>
internal sealed record Collection(
    string Name,
    ImmutableArray<int> Day,
    ImmutableArray<int> BaselineRun,
    ImmutableArray<int> DelayedRun,
    bool OneRun = false
)
{
    public int Days { get; } = Day.Max() + 1;

    /// <summary>The same number of specimens on each day, as far as possible, and each day a run for baselines and one for delayed results.</summary>
    public static Collection On(int days, int specimens) =>
        Daily(
            FormattableString.Invariant($"{days} {(days == 1 ? "day" : "days")}"),
            [.. Enumerable.Range(0, specimens).Select(i => i % days)]
        );

    /// <summary>As many specimens on each day as stated.</summary>
    public static Collection Uneven(params ImmutableArray<int> sizes) =>
        Daily(
            FormattableString.Invariant(
                $"{sizes.Length} days with {string.Join(", ", sizes)} specimens"
            ),
            [.. sizes.SelectMany((size, day) => Enumerable.Repeat(day, size))]
        );

    /// <summary>One specimen on each of four days and all others on a fifth.</summary>
    public static Collection Lopsided(int specimens) =>
        Daily(
            "5 days, all but four specimens on one",
            [.. Enumerable.Range(0, specimens).Select(i => i < 4 ? i + 1 : 0)]
        );

    /// <summary>Each pair on a day and in a run of its own: the one design in which specimens alone decide.</summary>
    public static Collection InOneRun(int specimens)
    {
        ImmutableArray<int> own = [.. Enumerable.Range(0, specimens)];
        return new("pairs in one run", own, own, own, OneRun: true);
    }

    /// <summary>The delayed tubes of several days saved up for one run.</summary>
    public Collection InDelayedRuns(int runs) =>
        this with
        {
            Name = FormattableString.Invariant(
                $"{Name}, {runs} delayed {(runs == 1 ? "run" : "runs")}"
            ),
            DelayedRun = [.. Day.Select(day => day % runs)],
        };

    /// <summary>Runs that cross: a baseline run a day, and specimens of every day in every delayed run.</summary>
    public static Collection Crossed(int baselineRuns, int delayedRuns, int specimens) =>
        new(
            FormattableString.Invariant(
                $"{baselineRuns} baseline runs crossed with {delayedRuns} delayed runs"
            ),
            [.. Enumerable.Range(0, specimens).Select(i => i % baselineRuns)],
            [.. Enumerable.Range(0, specimens).Select(i => i % baselineRuns)],
            [.. Enumerable.Range(0, specimens).Select(i => (i + (i / baselineRuns)) % delayedRuns)]
        );

    /// <summary>What each of so many runs adds to all of its results.</summary>
    public static double[] Shifts(int runs, SeededRandom random, double standardDeviation)
    {
        var shifts = new double[runs];
        for (var run = 0; run < runs; run++)
        {
            shifts[run] = standardDeviation == 0 ? 0 : standardDeviation * random.NextNormal();
        }

        return shifts;
    }

    /// <summary>What each day's run adds to all of its results.</summary>
    public double[] Shifts(SeededRandom random, double standardDeviation) =>
        Shifts(Days, random, standardDeviation);

    private static Collection Daily(string name, ImmutableArray<int> day) =>
        new(name, day, day, day);
}

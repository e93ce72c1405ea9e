using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>On which day each specimen was collected, and whether both its results came from one run.</summary>
/// <param name="Name">Name in the table.</param>
/// <param name="Day">Day of each specimen, counted from 0.</param>
/// <param name="OneRun">Whether each specimen's two results came from one run.</param>
internal sealed record Collection(string Name, ImmutableArray<int> Day, bool OneRun)
{
    public int Days { get; } = Day.Max() + 1;

    /// <summary>The same number of specimens on each day, as far as possible.</summary>
    public static Collection On(int days, int specimens) =>
        new(
            FormattableString.Invariant($"{days} {(days == 1 ? "day" : "days")}"),
            [.. Enumerable.Range(0, specimens).Select(i => i % days)],
            OneRun: false
        );

    /// <summary>One specimen on each of four days and all others on a fifth.</summary>
    public static Collection Lopsided(int specimens) =>
        new(
            "5 days, all but four specimens on one",
            [.. Enumerable.Range(0, specimens).Select(i => i < 4 ? i + 1 : 0)],
            OneRun: false
        );

    /// <summary>All on one day and each pair in one run: the one design in which specimens alone decide.</summary>
    public static Collection InOneRun(int specimens) =>
        new("pairs in one run", [.. Enumerable.Repeat(0, specimens)], OneRun: true);

    /// <summary>What each day's run adds to all of its results.</summary>
    public double[] Shifts(SeededRandom random, double standardDeviation)
    {
        var shifts = new double[Days];
        for (var day = 0; day < shifts.Length; day++)
        {
            shifts[day] = standardDeviation == 0 ? 0 : standardDeviation * random.NextNormal();
        }

        return shifts;
    }
}

using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Estimates;

/// <summary>The compared pairs of a cell as numbers.</summary>
/// <param name="Compared">The compared pairs, by specimen.</param>
/// <param name="Pairs">Baseline x and delayed y, exact, in the analyte's unit.</param>
/// <param name="Day">Collection day of each pair as a number that grows with the day: the cluster.</param>
/// <param name="DayCount">Number of collection days.</param>
/// <param name="SameRun">Whether baseline and delayed tube of every pair were tested in one recorded run.</param>
/// <param name="Decimals">Decimals of a reported result.</param>
internal sealed record CellData(
    ImmutableArray<PairRecord> Compared,
    ExactPairs Pairs,
    ImmutableArray<int> Day,
    int DayCount,
    bool SameRun,
    int Decimals
)
{
    /// <summary>Smallest step of a reported result, in the analyte's unit.</summary>
    public double ReportingIncrement => Math.Pow(10, -Decimals);

    /// <summary>Takes the compared pairs out of a cell's pairs.</summary>
    public static CellData Of(ImmutableArray<PairRecord> pairs, int decimals)
    {
        var compared = pairs.Where(pair => pair.Status == PairStatus.Compared).ToImmutableArray();
        var days = DayNumbers(compared);
        var baselines = new decimal[compared.Length];
        var delayed = new decimal[compared.Length];
        var day = ImmutableArray.CreateBuilder<int>(compared.Length);
        for (var i = 0; i < compared.Length; i++)
        {
            (baselines[i], delayed[i]) = compared[i].Values();
            day.Add(days[compared[i].CollectionDay]);
        }

        return new CellData(
            compared,
            ExactPairs.Create(baselines, delayed),
            day.MoveToImmutable(),
            days.Count,
            HaveSameRun(compared),
            decimals
        );
    }

    /// <summary>The same without one compared pair.</summary>
    /// <param name="index">Its place in <see cref="Compared"/>.</param>
    public CellData Without(int index)
    {
        var compared = Compared.RemoveAt(index);
        var day = Day.RemoveAt(index);
        return new CellData(
            compared,
            Pairs.Without(index),
            day,
            day.Contains(Day[index]) ? DayCount : DayCount - 1,
            HaveSameRun(compared),
            Decimals
        );
    }

    /// <summary>The collection days in order, numbered from 0.</summary>
    public static IReadOnlyDictionary<DateOnly, int> DayNumbers(ImmutableArray<PairRecord> pairs) =>
        pairs
            .Select(pair => pair.CollectionDay)
            .Distinct()
            .Order()
            .Select((day, number) => (day, number))
            .ToDictionary(item => item.day, item => item.number);

    private static bool HaveSameRun(ImmutableArray<PairRecord> compared) =>
        !compared.IsEmpty
        && compared.All(pair =>
            pair is { Baseline.Run: { Length: > 0 } run, Delayed.Run: { } other } && run == other
        );
}

using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Estimates;

/// <summary>The compared pairs of a cell as numbers.</summary>
/// <param name="Compared">The compared pairs, by specimen.</param>
/// <param name="Pairs">Baseline x and delayed y, exact, in the analyte's unit.</param>
/// <param name="Day">Collection day of each pair as a running number: the cluster.</param>
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
        var values = compared.Select(pair => pair.Values()).ToArray();
        var days = DayNumbers(compared);
        return new CellData(
            compared,
            ExactPairs.Create(
                [.. values.Select(value => value.Baseline)],
                [.. values.Select(value => value.Delayed)]
            ),
            [.. compared.Select(pair => days[pair.CollectionDay])],
            days.Count,
            !compared.IsEmpty
                && compared.All(pair =>
                    pair is { Baseline.Run: { Length: > 0 } run, Delayed.Run: { } other }
                    && run == other
                ),
            decimals
        );
    }

    /// <summary>The collection days in order, numbered from 0.</summary>
    public static ImmutableDictionary<DateOnly, int> DayNumbers(ImmutableArray<PairRecord> pairs) =>
        pairs
            .Select(pair => pair.CollectionDay)
            .Distinct()
            .Order()
            .Select((day, number) => (day, number))
            .ToImmutableDictionary(item => item.day, item => item.number);
}

using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// By how many percent of the baseline the runs could by chance have moved every change (<see cref="SharedShift"/>). What is met must still be met with every change moved; what is not met, with every change moved by half of it.
/// </summary>
/// <param name="Percent">The change moved, percent of the baseline.</param>
internal sealed record RunShift(double Percent)
{
    /// <summary>More moves every change beyond any limit, and no further than a decimal holds.</summary>
    private const double LargestPercent = 1e6;

    /// <summary>The shift that a refusal has to bear, percent of the baseline.</summary>
    public double PercentForRefusal => SharedShift.ShareForRefusal * Percent;

    /// <summary>The shift of the measured pairs among those counted.</summary>
    /// <param name="pairs">Pairs of a cell.</param>
    /// <param name="confidenceLevel">One-sided level of the criterion.</param>
    /// <param name="data">The compared ones as numbers.</param>
    public static RunShift Of(
        ImmutableArray<PairRecord> pairs,
        double confidenceLevel,
        CellData data
    )
    {
        var measured = pairs.Where(pair => pair.ChangePercent is not null).ToImmutableArray();
        return new(
            Math.Min(
                SharedShift.Of(
                    [.. measured.Select(pair => pair.ChangePercent!.Value)],
                    data.ErrorsOf(measured).Clusterings,
                    confidenceLevel
                ),
                LargestPercent
            )
        );
    }

    /// <summary>The pairs as they are, and with every measured delayed result moved up, and with every one moved down.</summary>
    public ImmutableArray<ImmutableArray<PairRecord>> Moved(ImmutableArray<PairRecord> pairs) =>
        [pairs, .. MovedBy(pairs, Percent)];

    /// <summary>The same with the shift that a refusal has to bear.</summary>
    public ImmutableArray<ImmutableArray<PairRecord>> MovedForRefusal(
        ImmutableArray<PairRecord> pairs
    ) => [pairs, .. MovedBy(pairs, PercentForRefusal)];

    private static IEnumerable<ImmutableArray<PairRecord>> MovedBy(
        ImmutableArray<PairRecord> pairs,
        double percent
    ) =>
        percent == 0
            ? []
            : new[] { percent, -percent }.Select(by =>
                pairs.Select(pair => Moved(pair, by)).ToImmutableArray()
            );

    private static PairRecord Moved(PairRecord pair, double percent)
    {
        if (!pair.IsOfNumbers)
        {
            return pair;
        }

        var (x, y) = pair.Values();
        return pair.WithDelayed(
            y + decimal.Round((decimal)percent * x / 100, ExactPairs.MostDecimals)
        );
    }
}

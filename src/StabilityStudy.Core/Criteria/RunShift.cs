using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// By how much the runs of these collection days could by chance have moved every change. A criterion that counts
/// specimens takes them as independent; those of a day that share runs are not, for what a run adds moves all of them,
/// perhaps to the good side of a limit. So where days differ, what is met must still be met with every change moved.
/// </summary>
/// <remarks>
/// The change moved is a bound of the error that runs share: t of the criterion's confidence and D − 1 degrees of freedom,
/// times the standard error that days share. Far from a limit it alters nothing; near one it keeps the chance of a
/// false claim near the stated one (simulations in METHODS.md). It never makes a criterion not met.
/// </remarks>
/// <param name="Percent">The change moved, percent of the baseline.</param>
internal sealed record RunShift(double Percent)
{
    /// <summary>Chance with which days that have nothing in common are taken to differ: a usual one before pooling (Bancroft 1964, from memory).</summary>
    private const double TestedAt = 0.25;

    /// <summary>More moves every change beyond any limit, and no further than a decimal holds.</summary>
    private const double LargestPercent = 1e6;

    private const int MostDecimals = 9;

    /// <summary>The shift; null when both tests of each pair share one run, when days do not differ, or when too few pairs tell.</summary>
    /// <param name="pairs">The pairs of a cell.</param>
    /// <param name="sameRun">Whether both results of each compared pair come from one run.</param>
    /// <param name="confidenceLevel">One-sided level of the criterion.</param>
    public static RunShift? Of(
        ImmutableArray<PairRecord> pairs,
        bool sameRun,
        double confidenceLevel
    )
    {
        var changes = ImmutableArray.CreateBuilder<double>();
        var days = ImmutableArray.CreateBuilder<int>();
        foreach (var pair in pairs)
        {
            if (pair.ChangePercent is { } change)
            {
                changes.Add(change);
                days.Add(pair.CollectionDay.DayNumber);
            }
        }

        return
            !sameRun
            && ClusterVariation.Compute([.. changes], [.. days]).TryGet(out var variation)
            && variation is { PValue: < TestedAt, SharedStandardError: > 0 and var error }
            ? new(
                Math.Min(
                    StudentT.Quantile(confidenceLevel, variation.Clusters - 1) * error,
                    LargestPercent
                )
            )
            : null;
    }

    /// <summary>The pairs with every measured delayed result moved up, and with every one moved down.</summary>
    public IEnumerable<ImmutableArray<PairRecord>> Moved(ImmutableArray<PairRecord> pairs) =>
        new[] { 1, -1 }.Select(direction =>
            pairs.Select(pair => Moved(pair, direction * Percent)).ToImmutableArray()
        );

    private static PairRecord Moved(PairRecord pair, double percent) =>
        pair
            is {
                Status: PairStatus.Compared,
                Baseline.Result: MeasuredResult { Value: var x },
                Delayed: { Result: MeasuredResult result } delayed
            }
            ? pair with
            {
                Delayed = delayed with
                {
                    Result = result with
                    {
                        Value =
                            result.Value + decimal.Round((decimal)percent * x / 100, MostDecimals),
                    },
                },
            }
            : pair;
}

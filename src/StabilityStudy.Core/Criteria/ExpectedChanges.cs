using StabilityStudy.Statistics.Noise;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// How many specimens would change their class if nothing but imprecision came between baseline and delayed result
/// (<see cref="ExpectedCrossings"/>).
/// </summary>
internal static class ExpectedChanges
{
    /// <summary>The expected number among the pairs measured both times; null when the protocol states no imprecision.</summary>
    public static double? Number(
        ImmutableArray<PairRecord> counted,
        IReadOnlyList<decimal> cutoffs,
        CellContext context
    )
    {
        if (context.Analyte.BetweenRunCvPercent is not > 0 || cutoffs.Count == 0)
        {
            return null;
        }

        var percent = ExpectedDifference.StandardDeviationPercent(
            (double)context.Analyte.BetweenRunCvPercent,
            context.Protocol.Replicates,
            context.Protocol.Replicates
        );
        return ExpectedCrossings.Number(
            counted
                .Keep(pair =>
                    pair
                        is {
                            Status: PairStatus.Compared,
                            Baseline.Result: MeasuredResult { Value: > 0 }
                        }
                )
                .Map(pair => (double)((MeasuredResult)pair.Baseline!.Result).Value)
                .AsSpan(),
            [.. cutoffs.Select(cutoff => (double)cutoff)],
            percent
        );
    }
}

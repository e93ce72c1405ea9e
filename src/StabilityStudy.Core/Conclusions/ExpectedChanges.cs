using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Noise;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// How many specimens would change their class if nothing but imprecision came between baseline and delayed result: the sum
/// over baselines x of Φ(−(x − a)/s) + Φ(−(b − x)/s), with a and b the cutoffs on either side of x and s the SD of one
/// difference at x. With one level it is Σ Φ(−|x − L|/s).
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
        return counted
            .Where(pair => pair.Status == PairStatus.Compared)
            .Select(pair => pair.Baseline?.Result)
            .OfType<MeasuredResult>()
            .Where(baseline => baseline.Value > 0)
            .Sum(baseline => OfOne(baseline.Value, cutoffs, percent / 100));
    }

    private static double OfOne(decimal baseline, IReadOnlyList<decimal> cutoffs, double noise)
    {
        var spread = noise * (double)baseline;
        var below = cutoffs.Where(cutoff => cutoff <= baseline).ToImmutableArray();
        var above = cutoffs.Where(cutoff => cutoff > baseline).ToImmutableArray();
        return (below.IsEmpty ? 0 : Normal.Cdf((double)(below.Max() - baseline) / spread))
            + (above.IsEmpty ? 0 : Normal.Cdf((double)(baseline - above.Min()) / spread));
    }
}

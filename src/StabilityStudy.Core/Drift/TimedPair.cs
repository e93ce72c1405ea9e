using System.Runtime.InteropServices;

namespace StabilityStudy.Core.Drift;

/// <summary>A measured pair whose two delays are known.</summary>
/// <param name="Pair">The pair.</param>
/// <param name="ChangePercent">Its change, computed once; null without a baseline above zero.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TimedPair(PairRecord Pair, double? ChangePercent)
{
    /// <summary>Hours from collection to the baseline.</summary>
    public double BaselineHours => Pair.Baseline!.Delay!.Value.TotalHours;

    /// <summary>Hours from collection to the delayed result.</summary>
    public double DelayedHours => Pair.Delayed!.Delay!.Value.TotalHours;

    /// <summary>Those among the pairs of a cell.</summary>
    public static ImmutableArray<TimedPair> Of(ImmutableArray<PairRecord> pairs)
    {
        var timed = ImmutableArray.CreateBuilder<TimedPair>(pairs.Length);
        foreach (var pair in pairs)
        {
            if (
                pair is
                {
                    Status: PairStatus.Compared,
                    Baseline: { Delay: not null, Result: MeasuredResult },
                    Delayed: { Delay: not null, Result: MeasuredResult }
                }
            )
            {
                timed.Add(new(pair, pair.ChangePercent));
            }
        }

        return timed.DrainToImmutable();
    }
}

using StabilityStudy.Statistics;

namespace StabilityStudy.Core.Controls;

/// <summary>The bridging plasmas of a study by run: what a run read in material that does not change.</summary>
internal sealed class RunBridging
{
    private readonly IReadOnlyDictionary<(string Run, string Plasma), decimal> _means;
    private readonly ILookup<string, string> _plasmas;

    private RunBridging(IReadOnlyDictionary<(string Run, string Plasma), decimal> means)
    {
        _means = means;
        _plasmas = means.Keys.ToLookup(key => key.Run, key => key.Plasma);
    }

    /// <summary>Those of an analyte; null when no bridging plasma has a result above zero.</summary>
    public static RunBridging? Of(ImmutableArray<ControlRow> controls)
    {
        var means = controls
            .Where(row =>
                row is { Kind: ControlKind.BridgingPlasma, Result: MeasuredResult { Value: > 0 } }
            )
            .GroupBy(row => (row.Run, row.Control))
            .ToDictionary(
                rows => rows.Key,
                rows => rows.Average(row => ((MeasuredResult)row.Result).Value)
            );
        return means.Count == 0 ? null : new(means);
    }

    /// <summary>
    /// Every delayed result divided by the shift of its own runs. A pair without a plasma that both runs tested is left out of the reading and counted.
    /// Null when that leaves no pair, so that nothing is known of the runs.
    /// </summary>
    public PairReading? Reading(ImmutableArray<PairRecord> pairs, CellContext context)
    {
        var without = ImmutableArray.CreateBuilder<string>();
        var bridged = ImmutableArray.CreateBuilder<PairRecord>();
        foreach (var pair in pairs)
        {
            if (!pair.IsOfNumbers)
            {
                bridged.Add(pair);
            }
            else if (Ratio(pair) is { } ratio)
            {
                bridged.Add(pair.WithDelayed(Bridged(pair.Values().Delayed, ratio)));
            }
            else
            {
                without.Add(pair.Specimen);
            }
        }

        return bridged.Any(pair => pair.IsOfNumbers)
            ? new(
                ChangeReading.RunsBridged,
                bridged.ToImmutable(),
                context.DataOf(bridged.ToImmutable())
            )
            {
                WithoutBridging = without.ToImmutable(),
            }
            : null;
    }

    /// <summary>A ratio beyond sense, from a result in another unit, leaves the largest result that can be: still a huge change.</summary>
    private static decimal Bridged(decimal delayed, decimal ratio) =>
        Math.Min(decimal.Round(delayed / ratio, ExactPairs.MostDecimals), ExactPairs.Largest);

    /// <summary>Delayed over baseline reading of each plasma that both runs tested, averaged over the plasmas; null without one.</summary>
    private decimal? Ratio(PairRecord pair)
    {
        var ratios = (
            from early in pair.Baseline!.Runs()
            from late in pair.Delayed!.Runs()
            from plasma in _plasmas[early].Intersect(_plasmas[late])
            select _means[(late, plasma)] / _means[(early, plasma)]
        ).ToImmutableArray();
        return ratios.IsEmpty ? null : ratios.Average();
    }
}

using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Controls;

/// <summary>
/// The shift of stable plasma between the runs of baselines and those of delayed tubes: 100·(delayed mean − baseline
/// mean)/baseline mean for each collection day and plasma, averaged over the plasmas of a day, then over days.
/// </summary>
internal static class BridgingPlasmas
{
    private const double ConfidenceLevel = 0.95;

    /// <summary>The shift; null when no plasma was tested in both kinds of run.</summary>
    public static BridgingShift? Shift(
        ImmutableArray<PairRecord> counted,
        ImmutableArray<ControlRow> controls
    )
    {
        var byRun = controls
            .Where(row => row is { Kind: ControlKind.BridgingPlasma, Result: MeasuredResult })
            .ToLookup(row => row.Run);
        if (byRun.Count == 0)
        {
            return null;
        }

        var days = counted
            .GroupBy(pair => pair.CollectionDay)
            .OrderBy(day => day.Key)
            .Select(day =>
                Plasmas(
                    Rows(day.Select(pair => pair.Baseline), byRun),
                    Rows(day.Select(pair => pair.Delayed), byRun)
                )
            )
            .Where(plasmas => !plasmas.IsEmpty)
            .ToImmutableArray();
        if (days.IsEmpty)
        {
            return null;
        }

        var all = days.SelectMany(plasmas => plasmas).ToImmutableArray();
        return new BridgingShift(
            all.Select(plasma => plasma.Code).Distinct().Count(),
            all.SelectMany(plasma => plasma.Baseline).Distinct().Count(),
            all.SelectMany(plasma => plasma.Delayed).Distinct().Count(),
            ArithmeticMean.WithInterval(
                days.Select(plasmas => plasmas.Average(plasma => plasma.ShiftPercent)).ToArray(),
                ConfidenceLevel
            )
        );
    }

    private static ImmutableArray<ControlRow> Rows(
        IEnumerable<Measurement?> measurements,
        ILookup<string, ControlRow> byRun
    ) =>
        [
            .. measurements
                .OfType<Measurement>()
                .SelectMany(measurement => measurement.Runs())
                .Distinct()
                .SelectMany(run => byRun[run]),
        ];

    private static ImmutableArray<Plasma> Plasmas(
        ImmutableArray<ControlRow> baseline,
        ImmutableArray<ControlRow> delayed
    ) =>
        [
            .. baseline
                .GroupBy(row => row.Control)
                .Join(
                    delayed.GroupBy(row => row.Control),
                    rows => rows.Key,
                    rows => rows.Key,
                    (before, after) => new Plasma(before.Key, [.. before], [.. after])
                )
                .Where(plasma => Mean(plasma.Baseline) > 0),
        ];

    private static decimal Mean(ImmutableArray<ControlRow> rows) =>
        rows.Select(row => row.Result).OfType<MeasuredResult>().Average(result => result.Value);

    private sealed record Plasma(
        string Code,
        ImmutableArray<ControlRow> Baseline,
        ImmutableArray<ControlRow> Delayed
    )
    {
        public double ShiftPercent =>
            (double)(100 * (Mean(Delayed) - Mean(Baseline)) / Mean(Baseline));
    }
}

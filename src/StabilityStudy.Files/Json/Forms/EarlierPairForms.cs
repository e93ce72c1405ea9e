using StabilityStudy.Core.Pairing;
using StabilityStudy.Files.Json.Entries;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>
/// Pairs as in form 2, where each states all of its specimen, tubes and runs: no longer written, and kept so that reports
/// of that form are compared property by property as when they were made.
/// </summary>
internal static class EarlierPairForms
{
    private static readonly ObjectForm<Measurement> s_measurement = new("measurement")
    {
        { "tube", v => v.Tube, Form.Text },
        { "result", v => v.Result, PairForms.ReportedResultForm },
        { "testedAt", v => v.TestedAt, Form.Time.OrNull() },
        { "delay", v => v.Delay, Form.Duration.OrNull() },
        { "run", v => v.Run, Form.Text },
        { "instrument", v => v.Instrument, Form.Text },
        { "lot", v => v.Lot, Form.Text },
        { "calibration", v => v.Calibration, Form.Text },
        { "sourceRow", v => v.SourceRow, Form.Count.OrNull() },
        { "operator", v => v.Operator, Form.Text },
    };

    private static readonly ObjectForm<FrozenTimes> s_frozenTimes = new("frozenTimes")
    {
        { "beforeFreezing", v => v.BeforeFreezing, Form.Duration },
        { "afterThawing", v => v.AfterThawing, Form.Duration },
    };

    private static readonly ObjectForm<PairRecord> s_pair = new("pairRecord")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "subject", v => v.Subject, Form.Text },
        { "collectionDay", v => v.CollectionDay, Form.Day },
        { "status", v => v.Status, Form.Word<PairStatus>() },
        { "baseline", v => v.Baseline, s_measurement.OrNull() },
        { "delayed", v => v.Delayed, s_measurement.OrNull() },
        { "isOutlier", v => v.IsOutlier, Form.Truth },
        { "isOfDelayedTube", v => v.IsOfDelayedTube, Form.Truth },
        { "timeBeforeSpinning", v => v.TimeBeforeSpinning, Form.Duration.OrNull() },
        { "timeAfterSpinning", v => v.TimeAfterSpinning, Form.Duration.OrNull() },
        { "frozen", v => v.Frozen, s_frozenTimes.OrLeftOut() },
        { "countsForAgreement", v => v.CountsForAgreement, Form.Truth },
        { "isExcludedKnowing", v => v.IsExcludedKnowing, Form.Truth },
        { "isLost", v => v.IsLost, Form.Truth },
        { "changePercent", v => v.ChangePercent, Form.Number.OrNull() },
    };

    /// <summary>The pairs of a time point.</summary>
    public static readonly Form<CellEntry> Pairs = Form.Of(
        Form.Keyed(s_pair, "specimen"),
        (CellEntry v) => v.Cell.Pairs
    );
}

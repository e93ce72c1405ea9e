using StabilityStudy.Core.Pairing;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Pairs, results and what became of every specimen.</summary>
internal static class PairForms
{
    public static readonly ObjectForm<StatusCount> StatusCountForm = new("statusCount")
    {
        { "status", v => v.Status, Form.Word<PairStatus>() },
        { "count", v => v.Count, Form.Count },
    };

    public static readonly ObjectForm<Disposition> DispositionForm = new("disposition")
    {
        { "planned", v => v.Planned, Form.Count },
        { "received", v => v.Received, Form.Count },
        { "counts", v => v.Counts, Form.Open(StatusCountForm, "status") },
    };

    public static readonly ObjectForm<MeasuredResult> MeasuredResultForm = new("measuredResult")
    {
        { "value", v => v.Value, Form.Exact },
        { "text", v => v.Text, Form.Text },
    };

    public static readonly ObjectForm<CensoredResult> CensoredResultForm = new("censoredResult")
    {
        { "side", v => v.Side, Form.Word<CensoredSide>() },
        { "limit", v => v.Limit, Form.Exact },
        { "text", v => v.Text, Form.Text },
    };

    public static readonly ObjectForm<CategoryResult> CategoryResultForm = new("categoryResult")
    {
        { "category", v => v.Category, Form.Count },
        { "text", v => v.Text, Form.Text },
    };

    public static readonly ObjectForm<MissingResult> MissingResultForm = new("missingResult")
    {
        { "reason", v => v.Reason, Form.Word<MissingReason>() },
        { "text", v => v.Text, Form.Text },
    };

    public static readonly ChoiceForm<ReportedResult> ReportedResultForm =
        new ChoiceForm<ReportedResult>("reportedResult")
        {
            { "measured", MeasuredResultForm },
            { "censored", CensoredResultForm },
            { "category", CategoryResultForm },
            { "missing", MissingResultForm },
        };

    public static readonly ObjectForm<Measurement> MeasurementForm = new("measurement")
    {
        { "tube", v => v.Tube, Form.Text },
        { "result", v => v.Result, ReportedResultForm },
        { "testedAt", v => v.TestedAt, Form.Time.OrNull() },
        { "delay", v => v.Delay, Form.Duration.OrNull() },
        { "run", v => v.Run, Form.Text },
        { "instrument", v => v.Instrument, Form.Text },
        { "lot", v => v.Lot, Form.Text },
        { "calibration", v => v.Calibration, Form.Text },
        { "sourceRow", v => v.SourceRow, Form.Count.OrNull() },
        { "operator", v => v.Operator, Form.Text },
    };

    public static readonly ObjectForm<FrozenTimes> FrozenTimesForm = new("frozenTimes")
    {
        { "beforeFreezing", v => v.BeforeFreezing, Form.Duration },
        { "afterThawing", v => v.AfterThawing, Form.Duration },
    };

    public static readonly ObjectForm<PairRecord> PairRecordForm = new("pairRecord")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "subject", v => v.Subject, Form.Text },
        { "collectionDay", v => v.CollectionDay, Form.Day },
        { "status", v => v.Status, Form.Word<PairStatus>() },
        { "baseline", v => v.Baseline, MeasurementForm.OrNull() },
        { "delayed", v => v.Delayed, MeasurementForm.OrNull() },
        { "isOutlier", v => v.IsOutlier, Form.Truth },
        { "isOfDelayedTube", v => v.IsOfDelayedTube, Form.Truth },
        { "timeBeforeSpinning", v => v.TimeBeforeSpinning, Form.Duration.OrNull() },
        { "timeAfterSpinning", v => v.TimeAfterSpinning, Form.Duration.OrNull() },
        { "frozen", v => v.Frozen, FrozenTimesForm.OrLeftOut() },
        { "countsForAgreement", v => v.CountsForAgreement, Form.Truth },
        { "isExcludedKnowing", v => v.IsExcludedKnowing, Form.Truth },
        { "isLost", v => v.IsLost, Form.Truth },
        { "changePercent", v => v.ChangePercent, Form.Number.OrNull() },
    };
}

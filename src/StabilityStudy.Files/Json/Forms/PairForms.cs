using StabilityStudy.Core.Pairing;
using StabilityStudy.Files.Json.Entries;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Specimens, runs, results and pairs, and what became of every specimen.</summary>
internal static class PairForms
{
    private static readonly Form<string?> s_recorded = new LeftOutForm<string?>(
        Form.Of<string?, string>(Form.Text, text => text!),
        text => !string.IsNullOrEmpty(text),
        isAnswer: true
    );

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

    // csharpier-ignore-start
    public static readonly ObjectForm<TubeEntry> TubeForm = new("tube")
    {
        { "tube", v => v.Tube, Form.Text, "code of the tube, unique within its specimen" },
        { "collectedAt", v => v.CollectedAt, Form.Time.OrNone(), "time of collection, where it is not that of the specimen" },
        { "spunAt", v => v.SpunAt, Form.Time.OrNone(), "time of spinning: from collection to it is the time before spinning, from it to the test the time after spinning" },
        { "frozenAt", v => v.FrozenAt, Form.Time.OrNone(), "time of freezing" },
        { "thawedAt", v => v.ThawedAt, Form.Time.OrNone(), "time of thawing" },
    };

    public static readonly ObjectForm<SpecimenEntry> SpecimenForm = new("specimen")
    {
        { "specimen", v => v.Specimen, Form.Text, "code of the specimen, by which pairs, baselines and queries name it" },
        { "subject", v => v.Subject, Form.Text, "study code of the person" },
        { "collectedAt", v => v.CollectedAt, Form.Time, "time of collection; its day is the day of collection" },
        { "tubes", v => v.Tubes, Form.Keyed(TubeForm, "tube"), "its tubes with a result in a pair" },
    };

    public static readonly ObjectForm<RunEntry> RunForm = new("run")
    {
        { "analyte", v => v.Analyte, Form.Text, "key of the analyte" },
        { "run", v => v.Run, Form.Text, "code of the run, by which the results of the analyte name it" },
        { "instrument", v => v.Instrument, s_recorded, "instrument, where all results of the run have the same" },
        { "lot", v => v.Lot, s_recorded, "reagent lot, where all results of the run have the same" },
        { "calibration", v => v.Calibration, s_recorded, "calibration, where all results of the run have the same" },
        { "operator", v => v.Operator, s_recorded, "who tested, where all results of the run have the same" },
    };

    public static readonly ObjectForm<ResultEntry> ResultForm = new("result")
    {
        { "tube", v => v.Result.Tube, Form.Text, "code of one of the specimen's tubes" },
        { "result", v => v.Result.Result, Form.Short(ReportedResultForm, ShortResult), "the result: a text where it is a number that was reported as it stands here" },
        { "testedAt", v => v.Result.TestedAt, Form.Time.OrNone(), "time of the test" },
        { "delay", v => v.Result.Delay, Form.Duration.OrNone(), "time from collection to the test, or from thawing where the protocol counts from there" },
        { "run", v => v.Result.Run, s_recorded, "code of one of the analyte's runs" },
        { "instrument", v => v.Instrument, s_recorded, "instrument, where the run does not state it" },
        { "lot", v => v.Lot, s_recorded, "reagent lot, where the run does not state it" },
        { "calibration", v => v.Calibration, s_recorded, "calibration, where the run does not state it" },
        { "operator", v => v.Operator, s_recorded, "who tested, where the run does not state it" },
        { "sourceRow", v => v.Result.SourceRow, Form.Count.OrNone(), "line of the result in the laboratory's own file" },
    };

    public static readonly ObjectForm<ResultEntry> BaselineForm = new("baseline")
    {
        { "specimen", v => v.Specimen, Form.Text, "code of the specimen" },
        ResultForm.Properties,
    };

    public static readonly ObjectForm<PairEntry> PairForm = new("pair")
    {
        { "specimen", v => v.Pair.Specimen, Form.Text, "code of the specimen, whose baseline stands in the sequence" },
        { "status", v => v.Pair.Status, Form.Word<PairStatus>(), "what became of the pair" },
        { "delayed", v => v.Delayed, ResultForm.OrNone(), "the result after the delay" },
        { "isOutlier", v => v.Pair.IsOutlier, Form.Truth.Unless(false), "whether its change was flagged as an outlier" },
        { "isOfDelayedTube", v => v.Pair.IsOfDelayedTube, Form.Truth.Unless(false), "whether it is ineligible for its delayed tube alone" },
        { "countsForAgreement", v => v.Pair.CountsForAgreement, Form.Truth.Unless(true), "false where it does not count for the individual criterion; left out where it does" },
        { "isExcludedKnowing", v => v.Pair.IsExcludedKnowing, Form.Truth.Unless(false), "whether it was excluded at a time when its result could already be known" },
        { "isLost", v => v.Pair.IsLost, Form.Truth.Unless(false), "whether the baseline is valid and the delayed result is lost: a criterion is met only if the pair is counted as outside" },
        { "changePercent", v => v.Pair.ChangePercent, Form.Number.OrNone(), "100·(delayed − baseline)/baseline of a compared pair of numbers" },
    };
    // csharpier-ignore-end

    /// <summary>What results and pairs name: specimens and runs.</summary>
    public static readonly ObjectForm<StudyEntry> Named = new()
    {
        {
            "specimens",
            v => v.Specimens,
            Form.Decisive(Form.Lines(SpecimenForm, "specimen")),
            "the specimens of all pairs, a line each"
        },
        {
            "runs",
            v => v.Runs.All,
            Form.Decisive(Form.Lines(RunForm, "analyte", "run")),
            "the runs of each analyte, a line each"
        },
    };

    /// <summary>The baselines of a sequence.</summary>
    public static readonly ObjectForm<SequenceEntry> Baselines = new()
    {
        {
            "baselines",
            v => v.Baselines,
            Form.Decisive(Form.Lines(BaselineForm, "specimen")),
            "the baseline of each specimen that has one, a line each"
        },
    };

    /// <summary>The pairs of a time point.</summary>
    public static readonly Form<CellEntry> Pairs = Form.Of(
        Form.Lines(PairForm, "specimen"),
        (CellEntry v) => v.Pairs
    );

    private static string? ShortResult(ReportedResult result) =>
        result is MeasuredResult { Text: var text, Value: var value }
        && text == value.ToString(CultureInfo.InvariantCulture)
            ? text
            : null;
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Scope;
using StabilityStudy.Files.Json.Entries;
using static StabilityStudy.Files.Json.Forms.DriftForms;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.EstimateForms;
using static StabilityStudy.Files.Json.Forms.FactsForms;
using static StabilityStudy.Files.Json.Forms.IdentityForms;
using static StabilityStudy.Files.Json.Forms.LocationForms;
using static StabilityStudy.Files.Json.Forms.PairForms;
using static StabilityStudy.Files.Json.Forms.PowerForms;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;
using static StabilityStudy.Files.Json.Forms.QueryForms;
using static StabilityStudy.Files.Json.Forms.TimePointForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The whole of analysis.json, as it is written and as it was in form 2, which reports of earlier versions carry.</summary>
internal static class AnalysisForms
{
    public static readonly ObjectForm<ScopeTimePoint> ScopeTimePointForm = new("scopeTimePoint")
    {
        { "timePoint", v => v.TimePoint, Form.TimePoint },
        { "conclusion", v => v.Conclusion, Form.Decisive(Form.Word<Conclusion>()) },
        { "ownConclusion", v => v.OwnConclusion, Form.Decisive(Form.Word<Conclusion>()) },
        { "received", v => v.Received, Form.Count },
        { "counted", v => v.Counted, Form.Count },
        {
            "criteria",
            v => v.Criteria,
            Form.Decisive(Form.Keyed(CriterionForms.ResultForm, "criterion"))
        },
        { "doubts", v => v.Doubts, Form.Open(ReasonForms.VerdictReasonForm, "kind") },
        { "robustness", v => v.Robustness, Form.Open(RobustnessLineForm, "code") },
        { "moreSpecimens", v => v.MoreSpecimens, MoreSpecimensForm.OrNull() },
    };

    public static readonly ObjectForm<ScopePart> ScopePartForm = new("scopePart")
    {
        { "code", v => v.Code, Form.Text },
        { "window", v => v.Window, Form.Decisive(SupportedWindowForm.OrNull()) },
        {
            "timePoints",
            v => v.TimePoints,
            Form.Decisive(Form.Keyed(ScopeTimePointForm, "timePoint"))
        },
    };

    public static readonly ObjectForm<ControlSummary> ControlSummaryForm = new("controlSummary")
    {
        { "analyte", v => v.Analyte, Form.Text },
        { "control", v => v.Control, Form.Text },
        { "kind", v => v.Kind, Form.Word<ControlKind>() },
        { "results", v => v.Results, Form.Count },
        { "runs", v => v.Runs, Form.Count },
        { "target", v => v.Target, Form.Exact.OrNull() },
        { "allowedLow", v => v.AllowedLow, Form.Exact.OrNull() },
        { "allowedHigh", v => v.AllowedHigh, Form.Exact.OrNull() },
        { "outside", v => v.Outside, Form.Count },
        { "spread", v => v.Spread, Estimate(SpreadSummaryForm) },
    };

    /// <summary>The form of this version.</summary>
    public static readonly ObjectForm<StudyEntry> StudyAnalysisForm = StudyForm(
        AnalysisJson.Format,
        PairForms.Named,
        PairForms.Baselines,
        PairForms.Pairs
    );

    /// <summary>Form 2.</summary>
    public static readonly ObjectForm<StudyEntry> EarlierForm = StudyForm(
        AnalysisJson.EarlierFormat,
        [],
        [],
        EarlierPairForms.Pairs
    );

    private static ObjectForm<CellEntry> CellForm(Form<CellEntry> pairs) =>
        new("cell")
        {
            { "analyte", v => v.Cell.Key.Analyte, Form.Text, "key of the analyte" },
            { "group", v => v.Cell.Key.Group, Form.Text, "key of the patient group" },
            { "storage", v => v.Cell.Key.Storage, Form.Text, "key of the storage" },
            { "timePoint", v => v.Cell.Key.TimePoint, Form.TimePoint, "planned delay" },
            { "conclusion", v => v.Cell.Conclusion, Form.Decisive(Form.Word<Conclusion>()) },
            { "ownConclusion", v => v.Cell.OwnConclusion, Form.Decisive(Form.Word<Conclusion>()) },
            { "disposition", v => v.Cell.Disposition, DispositionForm },
            {
                "criteria",
                v => v.Cell.Criteria,
                Form.Decisive(Form.Keyed(CriterionForms.ResultForm, "criterion"))
            },
            { "estimates", v => v.Cell.Estimates, CellEstimatesForm },
            { "robustness", v => v.Cell.Robustness, Form.Open(RobustnessLineForm, "code") },
            { "pairs", v => v, pairs },
            { "sideChanges", v => v.Cell.SideChanges, Form.Keyed(SideChangeForm, "level") },
            { "doubts", v => v.Cell.Doubts, Form.Open(ReasonForms.VerdictReasonForm, "kind") },
            { "controls", v => v.Cell.Controls, ControlEvidenceForm.OrNull() },
            { "moreSpecimens", v => v.Cell.MoreSpecimens, MoreSpecimensForm.OrNull() },
        };

    private static ObjectForm<SequenceEntry> SequenceForm(
        ObjectForm<SequenceEntry> baselines,
        ObjectForm<CellEntry> cell
    ) =>
        new("sequence")
        {
            { "analyte", v => v.Sequence.Analyte, Form.Text },
            { "group", v => v.Sequence.Group, Form.Text },
            { "storage", v => v.Sequence.Storage, Form.Text },
            { "window", v => v.Sequence.Window, Form.Decisive(SupportedWindowForm.OrNull()) },
            { "collection", v => v.Sequence.Collection, LookForms.CollectionForm },
            { "drift", v => v.Sequence.Drift, DriftResultForm },
            { "parts", v => v.Sequence.Parts, Form.Keyed(ScopePartForm, "code") },
            baselines.Properties,
            { "cells", v => v.Cells, Form.Decisive(Form.Keyed(cell, "timePoint")) },
        };

    private static ObjectForm<StudyEntry> StudyForm(
        int format,
        ObjectForm<StudyEntry> named,
        ObjectForm<SequenceEntry> baselines,
        Form<CellEntry> pairs
    ) =>
        new("studyAnalysis")
        {
            { "format", _ => format, Form.Count, "number of the form that this file has" },
            {
                "rules",
                _ => DecisionRules.Number,
                Form.Count,
                "number of the decision rules by which it was concluded"
            },
            { "toolVersion", v => v.Analysis.ToolVersion, Form.Text },
            { "identity", v => v.Analysis.Identity, Form.FromInputs(StudyIdentityForm) },
            { "lock", v => v.Analysis.Lock, Form.FromInputs(LockEvidenceForm) },
            { "protocol", v => v.Analysis.Protocol, Form.FromInputs(StudyProtocolForm) },
            { "facts", v => v.Analysis.Facts, Form.FromInputs(StudyFactsForm) },
            {
                "looks",
                v => v.Analysis.Looks,
                Form.FromInputs(Form.List(LookForms.EarlierLookForm))
            },
            { "queries", v => v.Analysis.Queries, DataQueriesForm },
            named.Properties,
            {
                "sequences",
                v => v.Sequences,
                Form.Decisive(
                    Form.Keyed(
                        SequenceForm(baselines, CellForm(pairs)),
                        "analyte",
                        "group",
                        "storage"
                    )
                )
            },
            {
                "controls",
                v => v.Analysis.Controls,
                Form.Keyed(ControlSummaryForm, "analyte", "control")
            },
            { "power", v => v.Analysis.Power, StudyPowerForm.OrNull() },
        };
}

using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Scope;
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

/// <summary>The whole of analysis.json.</summary>
internal static class AnalysisForms
{
    public static readonly ObjectForm<Cell> CellForm = new("cell")
    {
        { "analyte", v => v.Key.Analyte, Form.Text },
        { "group", v => v.Key.Group, Form.Text },
        { "storage", v => v.Key.Storage, Form.Text },
        { "timePoint", v => v.Key.TimePoint, Form.TimePoint },
        { "conclusion", v => v.Conclusion, Form.Decisive(Form.Word<Conclusion>()) },
        { "ownConclusion", v => v.OwnConclusion, Form.Decisive(Form.Word<Conclusion>()) },
        { "disposition", v => v.Disposition, DispositionForm },
        {
            "criteria",
            v => v.Criteria,
            Form.Decisive(Form.Keyed(CriterionForms.ResultForm, "criterion"))
        },
        { "estimates", v => v.Estimates, CellEstimatesForm },
        { "robustness", v => v.Robustness, Form.Open(RobustnessLineForm, "code") },
        { "pairs", v => v.Pairs, Form.Keyed(PairRecordForm, "specimen") },
        { "sideChanges", v => v.SideChanges, Form.Keyed(SideChangeForm, "level") },
        { "doubts", v => v.Doubts, Form.Open(ReasonForms.VerdictReasonForm, "kind") },
        { "controls", v => v.Controls, ControlEvidenceForm.OrNull() },
        { "moreSpecimens", v => v.MoreSpecimens, MoreSpecimensForm.OrNull() },
    };

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

    public static readonly ObjectForm<Sequence> SequenceForm = new("sequence")
    {
        { "analyte", v => v.Analyte, Form.Text },
        { "group", v => v.Group, Form.Text },
        { "storage", v => v.Storage, Form.Text },
        { "window", v => v.Window, Form.Decisive(SupportedWindowForm.OrNull()) },
        { "collection", v => v.Collection, LookForms.CollectionForm },
        { "drift", v => v.Drift, DriftResultForm },
        { "parts", v => v.Parts, Form.Keyed(ScopePartForm, "code") },
        { "cells", v => v.Cells, Form.Decisive(Form.Keyed(CellForm, "timePoint")) },
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

    public static readonly ObjectForm<StudyAnalysis> StudyAnalysisForm = new("studyAnalysis")
    {
        { "format", _ => AnalysisJson.Format, Form.Count },
        { "rules", _ => DecisionRules.Number, Form.Count },
        { "toolVersion", v => v.ToolVersion, Form.Text },
        { "identity", v => v.Identity, Form.FromInputs(StudyIdentityForm) },
        { "lock", v => v.Lock, Form.FromInputs(LockEvidenceForm) },
        { "protocol", v => v.Protocol, Form.FromInputs(StudyProtocolForm) },
        { "facts", v => v.Facts, Form.FromInputs(StudyFactsForm) },
        { "looks", v => v.Looks, Form.FromInputs(Form.List(LookForms.EarlierLookForm)) },
        { "queries", v => v.Queries, DataQueriesForm },
        {
            "sequences",
            v => v.Sequences,
            Form.Decisive(Form.Keyed(SequenceForm, "analyte", "group", "storage"))
        },
        { "controls", v => v.Controls, Form.Keyed(ControlSummaryForm, "analyte", "control") },
        { "power", v => v.Power, StudyPowerForm.OrNull() },
    };
}

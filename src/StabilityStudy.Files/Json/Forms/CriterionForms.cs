using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Files.Json.Forms.DriftStatisticsForms;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.LocationForms;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;
using static StabilityStudy.Files.Json.Forms.ReasonForms;
using static StabilityStudy.Files.Json.Forms.RegressionForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What criteria say of a time point, with the figures that decided.</summary>
internal static class CriterionForms
{
    public static readonly ObjectForm<SupportedWindow> SupportedWindowForm = new("supportedWindow")
    {
        { "time", v => v.Time, Form.Duration },
        { "planned", v => v.Planned, TimePointForm },
        { "shortestActualDelay", v => v.ShortestActualDelay, Form.Duration },
        { "manufacturerLimit", v => v.ManufacturerLimit, Form.Word<ManufacturerStanding>() },
        { "withinStandard", v => v.WithinStandard, Form.Truth },
    };

    private static readonly ObjectForm<CriterionResult> s_judged = new()
    {
        { "criterion", v => v.Criterion, Form.Text },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reasons", v => v.Reasons, Form.Open(VerdictReasonForm, "kind") },
    };

    public static readonly ObjectForm<BiasResult> BiasResultForm = new("biasResult")
    {
        s_judged.Properties,
        { "limit", v => v.Limit.Id, Form.Text },
        { "scale", v => v.Scale, Form.Word<ChangeScale>() },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "lowerLimit", v => v.LowerLimit, Form.Number.OrNull() },
        { "upperLimit", v => v.UpperLimit, Form.Number.OrNull() },
        { "mean", v => v.Mean, Estimate(ClusteredMeanIntervalForm) },
        { "equivalence", v => v.Equivalence, Estimate(EquivalenceTestForm) },
        { "spread", v => v.Spread, Estimate(SpreadSummaryForm) },
    };

    public static readonly ObjectForm<AgreementCount> AgreementCountForm = new("agreementCount")
    {
        { "counted", v => v.Counted, Form.Count },
        { "inside", v => v.Inside, Form.Count },
        { "outsideMeasured", v => v.OutsideMeasured, Form.Count },
        { "failed", v => v.Failed, Form.Count },
        { "undecidable", v => v.Undecidable, Form.Count },
        { "outsideSpecimens", v => v.OutsideSpecimens, Form.List(Form.Text) },
        { "agreeingBeyond", v => v.AgreeingBeyond, Form.Count },
        { "measured", v => v.Measured, Form.Count },
        { "days", v => v.Days, Form.Count },
        { "runShiftPercent", v => v.RunShiftPercent, Form.Number.OrNull() },
        { "outsideIfMoved", v => v.OutsideIfMoved, Form.Count },
        { "outside", v => v.Outside, Form.Count },
    };

    public static readonly ObjectForm<IndividualResult> IndividualResultForm = new(
        "individualResult"
    )
    {
        s_judged.Properties,
        { "limit", v => v.Limit.Id, Form.Text },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "agreement", v => v.Agreement, AgreementCountForm },
        { "requiredShare", v => v.RequiredShare, Form.Number },
        { "bounds", v => v.Bounds, Estimate(ProportionBoundsForm) },
        { "mostOutside", v => v.MostOutside, Form.Count.OrNull() },
    };

    public static readonly ObjectForm<LevelResult> LevelResultForm = new("levelResult")
    {
        { "level", v => v.Level, Form.Exact },
        { "baselinesBelow", v => v.BaselinesBelow, Form.Count },
        { "baselinesAbove", v => v.BaselinesAbove, Form.Count },
        { "allowed", v => v.Allowed, Form.Number },
        { "change", v => v.Change, Jackknifed(BiasAtLevelForm) },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reason", v => v.Reason, VerdictReasonForm },
    };

    public static readonly ObjectForm<DecisionLevelResult> DecisionLevelResultForm = new(
        "decisionLevelResult"
    )
    {
        s_judged.Properties,
        { "limit", v => v.Limit.Id, Form.Text },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "levels", v => v.Levels, Form.Keyed(LevelResultForm, "level") },
    };

    public static readonly ObjectForm<LevelReclassification> LevelReclassificationForm = new(
        "levelReclassification"
    )
    {
        { "level", v => v.Level, Form.Exact },
        { "counted", v => v.Counted, Form.Count },
        { "movedUp", v => v.MovedUp, Form.Count },
        { "movedDown", v => v.MovedDown, Form.Count },
        { "failed", v => v.Failed, Form.Count },
        { "undecidable", v => v.Undecidable, Form.Count },
        { "expectedFromNoise", v => v.ExpectedFromNoise, Form.Number.OrNull() },
        { "changedSpecimens", v => v.ChangedSpecimens, Form.List(Form.Text) },
        { "bounds", v => v.Bounds, Estimate(ProportionBoundsForm) },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reason", v => v.Reason, VerdictReasonForm },
        { "changedIfMoved", v => v.ChangedIfMoved, Form.Count },
    };

    public static readonly ObjectForm<ReclassificationResult> ReclassificationResultForm = new(
        "reclassificationResult"
    )
    {
        s_judged.Properties,
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "largestShare", v => v.LargestShare, Form.Number },
        { "levels", v => v.Levels, Form.Keyed(LevelReclassificationForm, "level") },
    };

    public static readonly ObjectForm<ClassChange> ClassChangeForm = new("classChange")
    {
        { "baseline", v => v.Baseline, Form.Count },
        { "delayed", v => v.Delayed, Form.Count },
        { "count", v => v.Count, Form.Count },
    };

    public static readonly ObjectForm<ClassificationResult> ClassificationResultForm = new(
        "classificationResult"
    )
    {
        s_judged.Properties,
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "requiredShare", v => v.RequiredShare, Form.Number },
        { "classes", v => v.Classes, Form.List(Form.Text) },
        { "table", v => v.Table, Form.List(ClassChangeForm) },
        { "counted", v => v.Counted, Form.Count },
        { "kept", v => v.Kept, Form.Count },
        { "failed", v => v.Failed, Form.Count },
        { "undecidable", v => v.Undecidable, Form.Count },
        { "weakPositives", v => v.WeakPositives, Form.Count },
        { "weakPositivesMinimum", v => v.WeakPositivesMinimum, Form.Count },
        { "expectedFromNoise", v => v.ExpectedFromNoise, Form.Number.OrNull() },
        { "changedSpecimens", v => v.ChangedSpecimens, Form.List(Form.Text) },
        { "bounds", v => v.Bounds, Estimate(ProportionBoundsForm) },
        { "changedIfMoved", v => v.ChangedIfMoved, Form.Count },
    };

    public static readonly ObjectForm<ShapeResult> ShapeResultForm = new("shapeResult")
    {
        { "shape", v => v.Shape, Form.Word<DriftShape>() },
        { "slope", v => v.Slope, Estimate(DriftEstimateForm) },
        { "predicted", v => v.Predicted, DriftPointForm.OrNull() },
        { "limitPercent", v => v.LimitPercent, Form.Number },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reason", v => v.Reason, VerdictReasonForm },
    };

    public static readonly ObjectForm<DriftCriterionResult> DriftCriterionResultForm = new(
        "driftCriterionResult"
    )
    {
        s_judged.Properties,
        { "limit", v => v.Limit.Id, Form.Text },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "shapes", v => v.Shapes, Form.Keyed(ShapeResultForm, "shape") },
    };

    public static readonly ChoiceForm<CriterionResult> CriterionResultForm =
        new ChoiceForm<CriterionResult>("criterionResult")
        {
            { "bias", BiasResultForm },
            { "individual", IndividualResultForm },
            { "decision-level", DecisionLevelResultForm },
            { "reclassification", ReclassificationResultForm },
            { "classification", ClassificationResultForm },
            { "drift", DriftCriterionResultForm },
        };

    public static readonly ObjectForm<ExcludedPairs> ExcludedPairsForm = new("excludedPairs")
    {
        { "count", v => v.Count, Form.Count },
        { "outside", v => v.Outside, Form.Count },
    };

    public static readonly ObjectForm<RobustnessLine> RobustnessLineForm = new("robustnessLine")
    {
        { "code", v => v.Question.Kind, Form.Word<RobustnessKind>() },
        { "conclusion", v => v.Conclusion, Form.Word<Conclusion>() },
        { "changes", v => v.Changes, Form.Truth },
        { "direction", v => v.Direction, Form.Word<RobustnessDirection>() },
        { "count", v => v.Question.Count, Form.Count.OrNull() },
        { "changing", v => v.Question.Changing, Form.Count.OrNull() },
        { "level", v => v.Question.Level, Form.Exact.OrNull() },
        { "scale", v => v.Question.Scale, Form.Word<ChangeScale>().OrNull() },
        { "excluded", v => v.Question.Excluded, ExcludedPairsForm.OrNull() },
    };

    public static readonly ObjectForm<BridgingShift> BridgingShiftForm = new("bridgingShift")
    {
        { "plasmas", v => v.Plasmas, Form.Count },
        { "baselineResults", v => v.BaselineResults, Form.Count },
        { "delayedResults", v => v.DelayedResults, Form.Count },
        { "meanPercent", v => v.MeanPercent, Estimate(MeanIntervalForm) },
    };

    public static readonly ObjectForm<ControlEvidence> ControlEvidenceForm = new("controlEvidence")
    {
        { "runs", v => v.Runs, Form.Count },
        { "runsInControl", v => v.RunsInControl, Form.Count },
        { "runsWithoutControl", v => v.RunsWithoutControl, Form.List(Form.Text) },
        { "runsOutOfControl", v => v.RunsOutOfControl, Form.List(Form.Text) },
        { "bridging", v => v.Bridging, BridgingShiftForm.OrNull() },
    };

    public static readonly ObjectForm<MoreSpecimens> MoreSpecimensForm = new("moreSpecimens")
    {
        { "specimens", v => v.Specimens, Form.Count.OrNull() },
        { "unlikelyToHelp", v => v.UnlikelyToHelp, Form.Truth },
    };
}

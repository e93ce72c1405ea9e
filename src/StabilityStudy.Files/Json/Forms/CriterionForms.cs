using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Files.Json.Forms.DriftStatisticsForms;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.LocationForms;
using static StabilityStudy.Files.Json.Forms.ReasonForms;
using static StabilityStudy.Files.Json.Forms.RegressionForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The rule of each kind of criterion, and what it says of a time point with the figures that decided.</summary>
internal static class CriterionForms
{
    private const string ReadingNote =
        "the values that are compared: as-measured; since-collection, with each baseline carried back to collection (METHODS.md); runs-bridged, with each delayed result divided by what the bridging plasmas of controls.csv read in its run over what they read in the run of its baseline; or both";

    public static readonly ObjectForm<LimitChoice> LimitChoiceForm = new("limitChoice")
    {
        { "analyte", v => v.Analyte, Form.Text },
        { "limit", v => v.Limit, Form.Text.OrNull() },
    };

    public static readonly ObjectForm<Rationale> RationaleForm = new("rationale")
    {
        { "chosenBy", v => v.ChosenBy, Form.Text.OrNull() },
        { "reason", v => v.Reason, Form.Text.OrNull() },
    };

    private static readonly ObjectForm<Criterion> s_ofEvery = new()
    {
        { "id", v => v.Id, Form.Text },
        { "limits", v => v.Limits, Form.List(LimitChoiceForm) },
        { "groups", v => v.Groups, Form.List(Form.Text) },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    private static readonly ObjectForm<Criterion> s_withShare = new()
    {
        s_ofEvery.Properties,
        { "rationale", v => v.Rationale, RationaleForm },
    };

    public static readonly ObjectForm<BiasCriterion> BiasCriterionForm = new("biasCriterion")
    {
        s_ofEvery.Properties,
        { "scale", v => v.Scale, Form.Word<ChangeScale>() },
        { "rule", v => v.Rule, Form.Word<DecisionRule>() },
        { "withoutLevels", v => v.WithoutLevels, Form.Text.OrNull() },
    };

    public static readonly ObjectForm<IndividualCriterion> IndividualCriterionForm = new(
        "individualCriterion"
    )
    {
        s_withShare.Properties,
        { "sharePercentMinimum", v => v.SharePercentMinimum, Form.Exact },
        { "rule", v => v.Rule, Form.Word<DecisionRule>() },
    };

    public static readonly ObjectForm<DecisionLevelCriterion> DecisionLevelCriterionForm = new(
        "decisionLevelCriterion"
    )
    {
        s_ofEvery.Properties,
        { "levels", v => v.Levels, Form.List(Form.Exact) },
    };

    public static readonly ObjectForm<NearRange> NearRangeForm = new("nearRange")
    {
        { "lowest", v => v.Lowest, Form.Exact },
        { "highest", v => v.Highest, Form.Exact },
        { "specimensMinimum", v => v.SpecimensMinimum, Form.Count },
    };

    public static readonly ObjectForm<ReclassificationCriterion> ReclassificationCriterionForm =
        new("reclassificationCriterion")
        {
            s_withShare.Properties,
            { "sharePercentMaximum", v => v.SharePercentMaximum, Form.Exact },
            { "levels", v => v.Levels, Form.List(Form.Exact) },
            { "zoneInUnit", v => v.ZoneInUnit, Form.Exact.OrNull() },
            {
                "direction",
                v => v.Direction,
                Form.Word<SideDirection>().OrLeftOutFor(SideDirection.Both)
            },
            { "near", v => v.Near, NearRangeForm.OrLeftOut() },
            { "levelsTogether", v => v.LevelsTogether, Form.Truth.OrLeftOutFor(false) },
        };

    public static readonly ObjectForm<ClassificationCriterion> ClassificationCriterionForm = new(
        "classificationCriterion"
    )
    {
        s_withShare.Properties,
        { "sharePercentMinimum", v => v.SharePercentMinimum, Form.Exact },
        { "cutoffs", v => v.Cutoffs, Form.List(Form.Exact) },
        { "weakPositivesMinimum", v => v.WeakPositivesMinimum, Form.Count },
    };

    public static readonly ObjectForm<DriftCriterion> DriftCriterionForm = new("driftCriterion")
    {
        s_ofEvery.Properties,
        { "shapes", v => v.Shapes, Form.List(Form.Word<DriftShape>()) },
    };

    public static readonly ChoiceForm<Criterion> RuleForm = new ChoiceForm<Criterion>("criterion")
    {
        { "bias", BiasCriterionForm },
        { "individual", IndividualCriterionForm },
        { "decision-level", DecisionLevelCriterionForm },
        { "reclassification", ReclassificationCriterionForm },
        { "classification", ClassificationCriterionForm },
        { "drift", DriftCriterionForm },
    };

    private static readonly ObjectForm<CriterionResult> s_judged = new()
    {
        { "criterion", v => v.Criterion, Form.Text },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reasons", v => v.Reasons, Form.Open(VerdictReasonForm, "kind") },
    };

    public static readonly ObjectForm<ReadMean> ReadMeanForm = new("readMean")
    {
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
        { "leftOut", v => v.LeftOut, Form.Count },
        { "mean", v => v.Mean, Estimate(ClusteredMeanIntervalForm) },
        { "spread", v => v.Spread, Estimate(SpreadSummaryForm) },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
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
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
        { "readings", v => v.Readings, Form.Keyed(ReadMeanForm, "reading") },
    };

    // csharpier-ignore-start
    public static readonly ObjectForm<AgreementCount> AgreementCountForm = new("agreementCount")
    {
        { "counted", v => v.Counted, Form.Count, "specimens that count, a person with several once, as the worst" },
        { "inside", v => v.Inside, Form.Count, "within the allowable difference, or beyond the same limit of measurement both times" },
        { "outsideMeasured", v => v.OutsideMeasured, Form.Count, "outside by measurement" },
        { "failed", v => v.Failed, Form.Count, "outside, because the delayed tube failed" },
        { "undecidable", v => v.Undecidable, Form.Count, "counted outside, because a result is lost or lies beyond the measuring interval" },
        { "outsideSpecimens", v => v.OutsideSpecimens, Form.List(Form.Text), "codes of all that count as outside, failed and undecidable ones among them" },
        { "agreeingBeyond", v => v.AgreeingBeyond, Form.Count, "of those inside, how many lie beyond the same limit of measurement both times" },
        { "measured", v => v.Measured, Form.Count, "of those that count, how many were measured both times" },
        { "runShiftPercent", v => v.RunShiftPercent, Form.Number, "percent of the allowable difference by which the runs could by chance have moved every change" },
        { "outsideIfMoved", v => v.OutsideIfMoved, Form.Count, "the most that would be outside with every change moved by that" },
        { "surelyOutsideIfHalfMoved", v => v.SurelyOutsideIfHalfMoved, Form.Count, "the fewest that would be outside, without undecidable ones, with every change moved by half of it" },
        { "outside", v => v.Outside, Form.Count, "all that count as outside" },
    };
    // csharpier-ignore-end

    public static readonly ObjectForm<ReadAgreement> ReadAgreementForm = new("readAgreement")
    {
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
        { "agreement", v => v.Agreement, AgreementCountForm },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
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
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
        { "readings", v => v.Readings, Form.Keyed(ReadAgreementForm, "reading") },
    };

    public static readonly ObjectForm<LevelResult> LevelResultForm = new("levelResult")
    {
        { "level", v => v.Level, Form.Exact },
        { "baselinesBelow", v => v.BaselinesBelow, Form.Count },
        { "baselinesAbove", v => v.BaselinesAbove, Form.Count },
        { "allowed", v => v.Allowed, Form.Number },
        { "change", v => v.Change, Jackknifed(BiasAtLevelForm) },
        { "beside", v => v.Beside, Estimate(ChangeBesideLevelForm) },
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
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
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
        { "zone", v => v.Zone, Form.Exact },
        { "onOtherSide", v => v.OnOtherSide, Form.Count },
        {
            "direction",
            v => v.Direction,
            Form.Word<SideDirection>().OrLeftOutFor(SideDirection.Both)
        },
    };

    public static readonly ObjectForm<SidesTogether> SidesTogetherForm = new("sidesTogether")
    {
        { "levels", v => v.Levels, Form.List(Form.Exact) },
        { "counted", v => v.Counted, Form.Count },
        { "changed", v => v.Changed, Form.Count },
        { "changedIfMoved", v => v.ChangedIfMoved, Form.Count },
        { "changedSpecimens", v => v.ChangedSpecimens, Form.List(Form.Text) },
        { "bounds", v => v.Bounds, Estimate(ProportionBoundsForm) },
        { "verdict", v => v.Verdict, Form.Decisive(Form.Word<Verdict>()) },
        { "reason", v => v.Reason, VerdictReasonForm },
    };

    public static readonly ObjectForm<ReclassificationResult> ReclassificationResultForm = new(
        "reclassificationResult"
    )
    {
        s_judged.Properties,
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "largestShare", v => v.LargestShare, Form.Number },
        { "levels", v => v.Levels, Form.Keyed(LevelReclassificationForm, "level") },
        { "reading", v => v.Reading, Form.Word<ChangeReading>(), ReadingNote },
        { "together", v => v.Together, SidesTogetherForm.OrLeftOut() },
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

    public static readonly ChoiceForm<CriterionResult> ResultForm = new ChoiceForm<CriterionResult>(
        "criterionResult"
    )
    {
        { "bias", BiasResultForm },
        { "individual", IndividualResultForm },
        { "decision-level", DecisionLevelResultForm },
        { "reclassification", ReclassificationResultForm },
        { "classification", ClassificationResultForm },
        { "drift", DriftCriterionResultForm },
    };
}

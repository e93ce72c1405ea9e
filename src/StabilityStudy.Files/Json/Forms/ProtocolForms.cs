using StabilityStudy.Core.Criteria;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What was planned.</summary>
internal static class ProtocolForms
{
    public static readonly ObjectForm<LaterTolerance> LaterToleranceForm = new("laterTolerance")
    {
        { "from", v => v.From, Form.Duration },
        { "late", v => v.Late, Form.Duration },
    };

    public static readonly ObjectForm<Tolerance> ToleranceForm = new("tolerance")
    {
        { "early", v => v.Early, Form.Duration },
        { "late", v => v.Late, Form.Duration },
        { "later", v => v.Later, Form.List(LaterToleranceForm).OrLeftOut() },
    };

    public static readonly ObjectForm<Signatory> SignatoryForm = new("signatory")
    {
        { "role", v => v.Role, Form.Text },
        { "meaning", v => v.Meaning, Form.Text },
    };

    public static readonly ObjectForm<Storage> StorageForm = new("storage")
    {
        { "id", v => v.Id, Form.Text },
        { "state", v => v.State, Form.Word<StorageState>() },
        { "cap", v => v.Cap, Form.Word<Cap>() },
        { "lowestCelsius", v => v.LowestCelsius, Form.Exact },
        { "highestCelsius", v => v.HighestCelsius, Form.Exact },
        { "spinToTest", v => v.SpinToTest, Form.Duration.OrNull() },
        { "transport", v => v.Transport, Form.Text.OrLeftOut() },
        { "spinTakes", v => v.SpinTakes, Form.Duration.OrLeftOut() },
    };

    public static readonly ObjectForm<PatientGroup> PatientGroupForm = new("patientGroup")
    {
        { "id", v => v.Id, Form.Text },
        { "name", v => v.Name, Form.Text },
        { "specimens", v => v.Specimens, Form.Count },
        { "baselineSpunWithin", v => v.BaselineSpunWithin, Form.Duration.OrNull() },
        { "anticoagulant", v => v.Anticoagulant, Form.Word<Anticoagulant>().OrNull() },
        { "whySoMany", v => v.WhySoMany, Form.Text.OrLeftOut() },
    };

    public static readonly ObjectForm<Eligibility> EligibilityForm = new("eligibility")
    {
        { "fillPercentMinimum", v => v.FillPercentMinimum, Form.Exact.OrNull() },
        { "hematocritPercentMaximum", v => v.HematocritPercentMaximum, Form.Exact.OrNull() },
        { "rejectClot", v => v.RejectClot, Form.Truth },
        { "source", v => v.Source, Form.Text },
    };

    public static readonly ObjectForm<WindowRule> WindowRuleForm = new("windowRule")
    {
        { "time", v => v.Time, Form.Duration },
        { "source", v => v.Source, Form.Text },
        { "asPlasma", v => v.AsPlasma, Form.Duration.OrLeftOut() },
    };

    public static readonly ObjectForm<MeasuringInterval> MeasuringIntervalForm = new(
        "measuringInterval"
    )
    {
        { "lowest", v => v.Lowest, Form.Exact },
        { "highest", v => v.Highest, Form.Exact },
    };

    public static readonly ObjectForm<GroupWindow> GroupWindowForm = new("groupWindow")
    {
        { "group", v => v.Group, Form.Text },
        { "rule", v => v.Rule, WindowRuleForm },
        { "timePoints", v => v.TimePoints, Form.List(Form.TimePoint) },
        { "storage", v => v.Storage, Form.Text.OrLeftOut() },
    };

    public static readonly ObjectForm<PlannedRange> PlannedRangeForm = new("plannedRange")
    {
        { "group", v => v.Group, Form.Text },
        { "lowest", v => v.Lowest, Form.Exact },
        { "highest", v => v.Highest, Form.Exact },
    };

    public static readonly ObjectForm<LevelMeaning> LevelMeaningForm = new("levelMeaning")
    {
        { "level", v => v.Level, Form.Exact },
        { "group", v => v.Group, Form.Text.OrNull() },
        { "below", v => v.Below, Form.Text.OrNull() },
        { "above", v => v.Above, Form.Text.OrNull() },
    };

    public static readonly ObjectForm<Analyte> AnalyteForm = new("analyte")
    {
        { "id", v => v.Id, Form.Text },
        { "name", v => v.Name, Form.Text },
        { "method", v => v.Method, Form.Text.OrNull() },
        { "loinc", v => v.Loinc, Form.Text.OrNull() },
        { "unit", v => v.Unit, Form.Text },
        { "decimals", v => v.Decimals, Form.Count },
        { "standardWindow", v => v.StandardWindow, WindowRuleForm },
        { "manufacturerLimit", v => v.ManufacturerLimit, WindowRuleForm.OrNull() },
        { "betweenRunCvPercent", v => v.BetweenRunCvPercent, Form.Exact.OrNull() },
        { "measuringInterval", v => v.MeasuringInterval, MeasuringIntervalForm.OrNull() },
        { "decisionLevels", v => v.DecisionLevels, Form.List(Form.Exact) },
        { "levelMeanings", v => v.LevelMeanings, Form.Keyed(LevelMeaningForm, "level", "group") },
        { "errorVarianceRatio", v => v.ErrorVarianceRatio, Form.Exact },
        { "driftShape", v => v.DriftShape, Form.Word<DriftShape>() },
        { "timePoints", v => v.TimePoints, Form.List(Form.TimePoint) },
        { "groups", v => v.Groups, Form.List(Form.Text) },
        { "storages", v => v.Storages, Form.List(Form.Text) },
        { "plannedRanges", v => v.PlannedRanges, Form.List(PlannedRangeForm) },
        { "groupWindows", v => v.GroupWindows, Form.List(GroupWindowForm) },
        { "categories", v => v.Categories, Form.List(Form.Text) },
        { "ratioOf", v => v.RatioOf, Form.Text.OrNull() },
    };

    public static readonly ObjectForm<RepeatOf> RepeatForm = new("repeatOf")
    {
        { "report", v => v.Report, Form.Text },
        { "digest", v => v.Digest, Form.Text },
        { "tier", v => v.Tier, Form.Word<RepeatTier>() },
        { "reason", v => v.Reason, Form.Text },
    };

    public static readonly ObjectForm<LimitBasis> LimitBasisForm = new("limitBasis")
    {
        { "withinCvPercent", v => v.WithinCvPercent, Form.Exact },
        { "betweenCvPercent", v => v.BetweenCvPercent, Form.Exact },
        { "grade", v => v.Grade, Form.Word<GoalGrade>() },
        { "goal", v => v.Goal, Form.Word<GoalKind>() },
    };

    public static readonly ObjectForm<Limit> LimitForm = new("limit")
    {
        { "id", v => v.Id, Form.Text },
        { "percent", v => v.Percent, Form.Exact.OrNull() },
        { "absoluteInUnit", v => v.AbsoluteInUnit, Form.Exact.OrNull() },
        { "source", v => v.Source, Form.Text },
        { "basis", v => v.Basis, LimitBasisForm.OrNull() },
        { "rationale", v => v.Rationale, CriterionForms.RationaleForm },
    };

    public static readonly ObjectForm<StudyProtocol> StudyProtocolForm = new("studyProtocol")
    {
        { "code", v => v.Code, Form.Text },
        { "version", v => v.Version, Form.Text },
        { "timePoints", v => v.TimePoints, Form.List(Form.TimePoint) },
        { "tolerance", v => v.Tolerance, ToleranceForm },
        { "baselineWithin", v => v.BaselineWithin, Form.Duration },
        { "tubePlan", v => v.TubePlan, Form.Word<TubePlan>() },
        { "replicates", v => v.Replicates, Form.Count },
        { "minimumDays", v => v.MinimumDays, Form.Count },
        { "windowStep", v => v.WindowStep, Form.Duration },
        { "signatories", v => v.Signatories, Form.List(SignatoryForm) },
        { "storages", v => v.Storages, Form.Keyed(StorageForm, "id") },
        { "groups", v => v.Groups, Form.Keyed(PatientGroupForm, "id") },
        { "eligibility", v => v.Eligibility, EligibilityForm },
        { "analytes", v => v.Analytes, Form.Keyed(AnalyteForm, "id") },
        { "limits", v => v.Limits, Form.Keyed(LimitForm, "id") },
        { "criteria", v => v.Criteria, Form.Keyed(CriterionForms.RuleForm, "id") },
        { "leftOutPercentMaximum", v => v.LeftOutPercentMaximum, Form.Exact },
        { "oneRunWithin", v => v.OneRunWithin, Form.Duration },
        { "rerunReasons", v => v.RerunReasons, Form.List(Form.Text) },
        { "controls", v => v.Controls, Form.Word<ControlRule>() },
        { "repeatDraws", v => v.RepeatDraws, Form.Word<RepeatDraws>() },
        { "changeSince", v => v.ChangeSince, Form.Word<ChangeOrigin>() },
        { "delaysPerSpecimen", v => v.DelaysPerSpecimen, Form.Count.OrNull() },
        { "instruments", v => v.Instruments, Form.List(Form.Text) },
        { "plannedLooks", v => v.PlannedLooks, Form.Count },
        {
            "timeOrigin",
            v => v.TimeOrigin,
            Form.Word<TimeOrigin>().OrLeftOutFor(TimeOrigin.Collection)
        },
        { "draw", v => v.Draw, HandlingForms.DrawForm.OrLeftOut() },
        { "spin", v => v.Spin, HandlingForms.SpinForm.OrLeftOut() },
        { "freezing", v => v.Freezing, HandlingForms.FreezingForm.OrLeftOut() },
        { "repeat", v => v.Repeat, RepeatForm.OrLeftOut() },
    };
}

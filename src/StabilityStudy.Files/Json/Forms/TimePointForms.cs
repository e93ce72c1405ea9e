using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.LocationForms;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What is concluded of a time point beside what each criterion says.</summary>
internal static class TimePointForms
{
    public static readonly ObjectForm<SupportedWindow> SupportedWindowForm = new("supportedWindow")
    {
        { "time", v => v.Time, Form.Duration },
        { "planned", v => v.Planned, Form.TimePoint },
        { "shortestActualDelay", v => v.ShortestActualDelay, Form.Duration },
        { "manufacturerLimit", v => v.ManufacturerLimit, Form.Word<ManufacturerStanding>() },
        { "withinStandard", v => v.WithinStandard, Form.Truth },
    };

    public static readonly ObjectForm<ExcludedPairs> ExcludedPairsForm = new("excludedPairs")
    {
        { "count", v => v.Count, Form.Count },
        { "outside", v => v.Outside, Form.Count },
    };

    public static readonly ObjectForm<CriterionOtherwise> CriterionOtherwiseForm = new(
        "criterionOtherwise"
    )
    {
        { "subject", v => v.Subject, Form.Text },
        { "criterion", v => v.Criterion, Form.Text },
        { "reason", v => v.Reason, ReasonForms.VerdictReasonForm },
    };

    public static readonly ObjectForm<RobustnessLine> RobustnessLineForm = new("robustnessLine")
    {
        {
            "code",
            v => v.Question.Kind,
            Form.Word<RobustnessKind>(),
            "what is supposed to have been otherwise"
        },
        { "conclusion", v => v.Conclusion, Form.Word<Conclusion>() },
        { "changes", v => v.Changes, Form.Truth },
        { "direction", v => v.Direction, Form.Word<RobustnessDirection>() },
        { "count", v => v.Question.Count, Form.Count.OrNull() },
        { "changing", v => v.Question.Changing, Form.Count.OrNull() },
        { "otherwise", v => v.Question.Otherwise, CriterionOtherwiseForm.OrNull() },
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

using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Planning;
using StabilityStudy.Statistics.Planning;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>How often studies like this one would support a time point.</summary>
internal static class PowerForms
{
    public static readonly ObjectForm<SupposedResults> SupposedResultsForm = new("supposedResults")
    {
        { "specimens", v => v.Conduct.Specimens, Form.Count },
        { "specimensOfDays", v => v.Conduct.SpecimensOfDays, Form.List(Form.Count) },
        {
            "baselineRuns",
            v => v.Conduct.BaselineRun.Distinct().Count(),
            Form.Count,
            "number of runs with baselines"
        },
        {
            "delayedRuns",
            v => v.Conduct.DelayedRun.Distinct().Count(),
            Form.Count,
            "number of runs with delayed results"
        },
        { "sameRun", v => v.SameRun, Form.Truth },
        { "baselineMedian", v => v.BaselineMedian, Form.Number },
        { "baselineLogSd", v => v.BaselineLogSd, Form.Number },
        { "specimenSdPercent", v => v.SpecimenSdPercent, Form.Number },
        { "repeatCvPercent", v => v.RepeatCvPercent, Form.Number },
        { "runSdPercent", v => v.RunSdPercent, Form.Number },
    };

    public static readonly ObjectForm<CriterionPower> CriterionPowerForm = new("criterionPower")
    {
        { "criterion", v => v.Criterion, Form.Text },
        { "power", v => v.Power, Form.Number },
    };

    public static readonly ObjectForm<CharacteristicPoint> CharacteristicPointForm = new(
        "characteristicPoint"
    )
    {
        { "truth", v => v.Truth, Form.Number },
        { "accepted", v => v.Accepted, Form.Count },
        { "studies", v => v.Studies, Form.Count },
        { "probability", v => v.Probability, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    public static readonly ObjectForm<PowerAtChange> PowerAtChangeForm = new("powerAtChange")
    {
        { "shareOfBoundary", v => v.ShareOfBoundary, Form.Number },
        { "meanChangePercent", v => v.MeanChangePercent, Form.Number },
        { "alone", v => v.Alone, Form.Keyed(CriterionPowerForm, "criterion") },
        { "together", v => v.Together, CharacteristicPointForm },
        { "atSpreadBound", v => v.AtSpreadBound, CharacteristicPointForm },
    };

    public static readonly ObjectForm<TimePointPower> TimePointPowerForm = new("timePointPower")
    {
        {
            "supposed",
            v => v.Supposed.Found,
            SupposedResultsForm,
            "how the results are supposed to arise, with the spread as it was found"
        },
        {
            "supposedAtSpreadBound",
            v => v.Supposed.AtBound,
            SupposedResultsForm,
            "the same with the upper bounds of the spread"
        },
        {
            "spreadConfidenceLevel",
            _ => SupposedSpread.ConfidenceLevel,
            Form.Number,
            "one-sided level of these upper bounds"
        },
        { "boundaryPercent", v => v.BoundaryPercent, Form.Number },
        { "points", v => v.Points, Form.List(PowerAtChangeForm) },
    };

    public static readonly ObjectForm<CellPower> CellPowerForm = new("cellPower")
    {
        { "analyte", v => v.Key.Analyte, Form.Text },
        { "group", v => v.Key.Group, Form.Text },
        { "storage", v => v.Key.Storage, Form.Text },
        { "timePoint", v => v.Key.TimePoint, Form.TimePoint },
        { "power", v => v.Power, Estimate(TimePointPowerForm) },
    };

    public static readonly ObjectForm<StudyPower> StudyPowerForm = new("studyPower")
    {
        { "studies", v => v.Studies, Form.Count },
        { "seed", v => v.Seed, Form.Seed },
        { "timePoints", v => v.TimePoints, Form.List(CellPowerForm) },
    };
}

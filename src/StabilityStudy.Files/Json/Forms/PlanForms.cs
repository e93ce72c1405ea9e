using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Planning;
using static StabilityStudy.Files.Json.Forms.PowerForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What a planned study takes and can show, as <c>plan --json</c> writes it.</summary>
internal static class PlanForms
{
    private static readonly ObjectForm<GroupMaterial> s_material = new("groupMaterial")
    {
        { "group", v => v.Group, Form.Text },
        { "specimens", v => v.Specimens, Form.Count },
        { "tubes", v => v.Tubes, Form.Count },
        { "spares", v => v.Spares, Form.Count },
        { "tubesOfSpecimen", v => v.TubesOfSpecimen, Form.Count },
        { "portionsOfSpecimen", v => v.PortionsOfSpecimen, Form.Count.OrNull() },
        { "millilitersOfSpecimen", v => v.MillilitersOfSpecimen, Form.Exact },
    };

    private static readonly ObjectForm<AllowedFailures> s_allowed = new("allowedFailures")
    {
        { "criterion", v => v.Criterion, Form.Text },
        { "kind", v => v.Kind, Form.Word<CriterionKind>() },
        { "sharePercent", v => v.SharePercent, Form.Exact },
        { "specimens", v => v.Specimens, Form.Count },
        { "allowed", v => v.Allowed, Form.Count.OrNull() },
        { "nextSpecimens", v => v.NextSpecimens, Form.Count },
    };

    private static readonly ObjectForm<LevelRange> s_level = new("levelRange")
    {
        { "level", v => v.Level, Form.Exact },
        { "eachSide", v => v.EachSide, Form.Count },
        { "plannedBelow", v => v.PlannedBelow, Form.Count.OrNull() },
        { "plannedAbove", v => v.PlannedAbove, Form.Count.OrNull() },
        { "isInRange", v => v.IsInRange, Form.Truth.OrNull() },
    };

    private static readonly ObjectForm<PlannedChange> s_expected = new("plannedChange")
    {
        { "percent", v => v.Percent, Form.Number.OrNull() },
        { "specimenSdPercent", v => v.SpecimenSdPercent, Form.Number },
        { "sdFrom", v => v.SdFrom, Form.Word<SdOrigin>() },
        { "pilotPairs", v => v.PilotPairs, Form.Count },
        { "source", v => v.Source, Form.Text.OrNull() },
    };

    private static readonly ObjectForm<CriterionChance> s_criterion = new("criterionChance")
    {
        { "criterion", v => v.Criterion, Form.Text },
        { "simulated", v => v.Simulated, CharacteristicPointForm },
        { "exact", v => v.Exact, Form.Number.OrNull() },
    };

    private static readonly ObjectForm<CostRate> s_cost = new("costRate")
    {
        { "cost", v => v.Cost, Form.Word<ChanceCost>() },
        { "rate", v => v.Rate, Form.Number },
    };

    private static readonly ObjectForm<ChanceAtChange> s_chance = new("chanceAtChange")
    {
        { "shareOfExpected", v => v.ShareOfExpected, Form.Number },
        { "meanChangePercent", v => v.MeanChangePercent, Form.Number },
        { "together", v => v.Together, CharacteristicPointForm },
        { "byCriterion", v => v.ByCriterion, Form.List(s_criterion) },
        { "costs", v => v.Costs, Form.List(s_cost) },
    };

    private static readonly ObjectForm<PlannedTimePoint> s_timePoint = new("plannedTimePoint")
    {
        { "timePoint", v => v.TimePoint, Form.TimePoint },
        { "expected", v => v.Expected, s_expected },
        { "notSimulated", v => v.Gap, Form.Word<PlanGap>().OrNull() },
        { "rangeIsSupposed", v => v.RangeIsSupposed, Form.Truth },
        { "chances", v => v.Chances, Form.List(s_chance) },
    };

    private static readonly ObjectForm<JointChance> s_joint = new("jointChance")
    {
        { "timePoint", v => v.TimePoint, Form.TimePoint },
        { "shareOfExpected", v => v.ShareOfExpected, Form.Number },
        { "chance", v => v.Chance, CharacteristicPointForm },
    };

    private static readonly ObjectForm<PlannedRow> s_row = new("plannedRow")
    {
        { "analyte", v => v.Analyte.Id, Form.Text },
        { "group", v => v.Group.Id, Form.Text },
        { "storage", v => v.Storage.Id, Form.Text },
        { "specimens", v => v.Specimens, Form.Count },
        { "shares", v => v.Shares, Form.List(s_allowed) },
        { "levels", v => v.Levels, Form.List(s_level) },
        { "timePoints", v => v.TimePoints, Form.List(s_timePoint) },
        { "joint", v => v.Joint, Form.List(s_joint) },
    };

    private static readonly ObjectForm<PlanAlternative> s_alternative = new("planAlternative")
    {
        { "what", v => v.What, Form.Word<AlternativeKind>() },
        { "specimens", v => v.Specimens, Form.Count },
        { "days", v => v.Days, Form.Count },
        { "chance", v => v.Chance, CharacteristicPointForm },
    };

    private static readonly ObjectForm<PlanDetail> s_detail = new("planDetail")
    {
        { "analyte", v => v.Key.Analyte, Form.Text },
        { "group", v => v.Key.Group, Form.Text },
        { "storage", v => v.Key.Storage, Form.Text },
        { "timePoint", v => v.Key.TimePoint, Form.TimePoint },
        { "alternatives", v => v.Alternatives, Form.List(s_alternative) },
        { "smallestFor80Percent", v => v.For80, Form.Count.OrNull() },
        { "smallestFor90Percent", v => v.For90, Form.Count.OrNull() },
    };

    private static readonly ObjectForm<LowChance> s_low = new("lowChance")
    {
        { "analyte", v => v.Row.Analyte.Id, Form.Text },
        { "group", v => v.Row.Group.Id, Form.Text },
        { "storage", v => v.Row.Storage.Id, Form.Text },
        { "timePoint", v => v.TimePoint.TimePoint, Form.TimePoint },
        { "kind", v => v.Kind, Form.Word<LowChanceKind>() },
        { "chance", v => v.Chance, Form.Number },
    };

    public static readonly ObjectForm<StatedPlan> DocumentForm = new("studyPlan")
    {
        { "code", v => v.Plan.Protocol.Code, Form.Text },
        { "version", v => v.Plan.Protocol.Version, Form.Text },
        { "studies", v => v.Plan.Request.Studies, Form.Count },
        { "seed", v => v.Plan.Request.Seed, Form.Seed },
        { "tolerance", v => v.Plan.Request.Tolerance, Form.Number },
        { "days", v => v.Plan.Days, Form.Count },
        { "daysFrom", v => v.Plan.DaysFrom, Form.Word<DaysOrigin>() },
        { "material", v => v.Plan.Material, Form.List(s_material) },
        { "rows", v => v.Plan.Rows, Form.List(s_row) },
        { "detail", v => v.Plan.Detail, s_detail.OrNull() },
        { "lowChances", v => LowChances.Of(v.Plan), Form.List(s_low) },
        { "paragraph", v => v.Paragraph, Form.Text },
    };

    /// <summary>A plan with the paragraph that goes into the protocol.</summary>
    internal sealed record StatedPlan(StudyPlan Plan, string Paragraph);
}

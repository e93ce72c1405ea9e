using StabilityStudy.Core.Collecting;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What check shows: how far a collection is, and the queries.</summary>
internal static class CollectionForms
{
    private static readonly ObjectForm<GroupInventory> s_group = new("groupInventory")
    {
        { "group", v => v.Group, Form.Text },
        { "planned", v => v.Planned, Form.Count },
        { "specimens", v => v.Specimens, Form.Count },
        { "unusable", v => v.Unusable, Form.Count },
        { "tested", v => v.Count(TestStanding.Tested), Form.Count },
        { "dueNow", v => v.Count(TestStanding.DueNow), Form.Count },
        { "dueLater", v => v.Count(TestStanding.DueLater), Form.Count },
        { "overdue", v => v.Count(TestStanding.Overdue), Form.Count },
        { "inQuestion", v => v.Count(TestStanding.InQuestion), Form.Count },
        { "lost", v => v.Count(TestStanding.Lost), Form.Count },
    };

    private static readonly ObjectForm<PlannedTest> s_test = new("plannedTest")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "group", v => v.Group, Form.Text },
        { "storage", v => v.Storage, Form.Text },
        { "occasion", v => v.Occasion.ToString(), Form.Text },
        { "analytes", v => v.Analytes, Form.List(Form.Text) },
        { "standing", v => v.Standing, Form.Word<TestStanding>() },
        { "earliest", v => v.Earliest, Form.Time },
        { "latest", v => v.Latest, Form.Time },
        { "spinFrom", v => v.SpinFrom, Form.Time.OrNull() },
        { "spinBy", v => v.SpinBy, Form.Time.OrNull() },
    };

    private static readonly ObjectForm<LevelSoFar> s_level = new("levelSoFar")
    {
        { "level", v => v.Level, Form.Exact },
        { "below", v => v.Below, Form.Count },
        { "above", v => v.Above, Form.Count },
        { "wanted", v => v.Wanted, Form.Count },
    };

    private static readonly ObjectForm<BaselineRange> s_range = new("baselineRange")
    {
        { "analyte", v => v.Analyte, Form.Text },
        { "group", v => v.Group, Form.Text },
        { "count", v => v.Count, Form.Count },
        { "lowest", v => v.Lowest, Form.Exact.OrNull() },
        { "highest", v => v.Highest, Form.Exact.OrNull() },
        { "plannedLowest", v => v.Planned?.Lowest, Form.Exact.OrNull() },
        { "plannedHighest", v => v.Planned?.Highest, Form.Exact.OrNull() },
        { "levels", v => v.Levels, Form.List(s_level) },
    };

    /// <summary>How far a collection is; of the tests those that are still to come.</summary>
    private static readonly ObjectForm<CollectionInventory> s_inventory = new("inventory")
    {
        { "asOf", v => v.AsOf, Form.Time },
        { "days", v => v.Days, Form.Count },
        { "plannedDays", v => v.PlannedDays, Form.Count },
        { "collectedLater", v => v.CollectedLater, Form.Count },
        { "groups", v => v.Groups, Form.List(s_group) },
        { "open", v => [.. v.Tests.Where(test => test.IsOpen)], Form.List(s_test) },
        { "baselines", v => v.Ranges, Form.List(s_range) },
    };

    /// <summary>The document that check writes.</summary>
    public static readonly ObjectForm<(
        CollectionInventory? Inventory,
        ImmutableArray<DataQuery> Queries,
        ImmutableArray<DataQuery> Answered
    )> DocumentForm = new("checkDocument")
    {
        { "collection", v => v.Inventory, s_inventory.OrNull() },
        { "queries", v => v.Queries, QueryForms.WordedQueriesForm },
        { "answered", v => v.Answered, QueryForms.WordedQueriesForm },
    };
}

using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The answer of a plan: what is likely to come out, and what the study takes.</summary>
internal static class PlanAnswer
{
    /// <summary>More rows are counted, not told one by one.</summary>
    private const int MostRows = 3;

    /// <summary>Which times are within reach.</summary>
    public static string Of(StudyPlan plan) =>
        plan.Rows.Length <= MostRows
            ? "As planned: " + string.Join("; ", plan.Rows.Select(row => OfRow(plan, row))) + "."
            : Counted(plan);

    /// <summary>Specimens, tubes, blood and days, a sentence a group.</summary>
    public static ImmutableArray<string> Material(StudyPlan plan) =>
        [
            .. plan.Material.Select(item =>
                (
                    plan.Material.Length > 1
                        ? plan.Protocol.Groups.Single(group => group.Id == item.Group).Name + ": "
                        : ""
                ) + Material(item, plan)
            ),
        ];

    private static string Material(GroupMaterial item, StudyPlan plan)
    {
        var days = $"{NumberText.Count(plan.Days)} days";
        var blood =
            $"About {NumberText.Count((int)Math.Ceiling(item.MillilitersOfSpecimen))} mL of blood a person (tubes of {NumberText.Plain(plan.Request.MillilitersOfTube)} mL).";
        return item.PortionsOfSpecimen is { } portions
            ? $"{NumberText.Count(item.Specimens)} specimens, {NumberText.Count(item.Tubes)} tubes, {NumberText.Count(item.Specimens * portions)} portions and {NumberText.Count(item.Spares)} spare portions, {days}. {blood}"
            : $"{NumberText.Count(item.Specimens)} specimens, {NumberText.Count(item.Tubes)} tubes and {NumberText.Count(item.Spares)} spares, {days}. {blood}";
    }

    private static string OfRow(StudyPlan plan, PlannedRow row)
    {
        var name = ChanceTable.Name(plan, row);
        var points = row
            .TimePoints.Where(point => point.WithAll is not null)
            .Select(point => (point.TimePoint, point.WithAll!.Together.Probability))
            .ToArray();
        if (points.Length == 0)
        {
            return row.TimePoints[0].WithoutChange is { Together.Probability: var none }
                ? $"{name}, {row.TimePoints[0].TimePoint} is {ChanceWords.Word(none)} ({ChanceWords.Percent(none)}) if nothing changes; no published change is stated"
                : $"{name}: not simulated";
        }

        var first = points[0];
        var said =
            $"{name}, {first.TimePoint} is {ChanceWords.Word(first.Probability)} ({ChanceWords.Percent(first.Probability)}) if specimens change as published";
        return
            points[^1] is var last
            && last.TimePoint != first.TimePoint
            && ChancesOfSupport.Of(first.Probability) == ChanceOfSupport.Likely
            ? $"{said}, {last.TimePoint} {ChanceWords.Word(last.Probability)} ({ChanceWords.Percent(last.Probability)})"
            : said;
    }

    private static string Counted(StudyPlan plan)
    {
        var points = plan.Rows.SelectMany(row => row.TimePoints).ToArray();
        var asPublished = points
            .Select(point => point.WithAll)
            .OfType<ChanceAtChange>()
            .CountBy(chance => ChancesOfSupport.Of(chance.Together.Probability))
            .ToDictionary();
        var words = ChancesOfSupport
            .All.Where(asPublished.ContainsKey)
            .Select(word => $"{NumberText.Count(asPublished[word])} {ChanceWords.Word(word)}")
            .ToArray();
        var without = points.Count(point =>
            point.WithoutChange is { Together.Probability: var chance }
            && ChancesOfSupport.Of(chance) == ChanceOfSupport.Likely
        );
        return $"Of {NumberText.Count(points.Length)} times {NumberText.Count(without)} are likely to be supported if nothing changes"
            + (
                words.Length > 0
                    ? $"; if specimens change as published: {string.Join(", ", words)}."
                    : "; no published change is stated."
            );
    }
}

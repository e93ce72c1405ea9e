using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The chance of "supported" for every time point on its own: if nothing changed, if half of the published change were true, if all of it were.</summary>
internal static class ChanceTable
{
    /// <summary>The table.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Of(StudyPlan plan) =>
        new(
            $"Chance of “supported”{Numbers(plan)}",
            [
                new Column("Tested after", ColumnAlignment.Left, 1),
                new Column("Published change", ColumnAlignment.Left, 1.3),
                new Column("If nothing changes", ColumnAlignment.Left, 1.6),
                new Column("Half as published", ColumnAlignment.Left, 1.9),
                new Column("As published", ColumnAlignment.Left, 1.9),
                new Column("Needs", ColumnAlignment.Left, 1.3),
            ],
            [.. plan.Rows.SelectMany(row => Rows(plan, row))],
            null
        );

    /// <summary>Analyte, group and storage, as short as the protocol allows.</summary>
    public static string Name(StudyPlan plan, PlannedRow row) =>
        string.Join(
            ", ",
            new[]
            {
                plan.Protocol.Analytes.Length > 1 || plan.Protocol.Groups.Length == 1
                    ? row.Analyte.Id
                    : "",
                plan.Protocol.Groups.Length > 1 ? row.Group.Name : "",
                plan.Protocol.Storages.Length > 1 ? TradeWords.Of(row.Storage) : "",
            }.Where(part => part.Length > 0)
        );

    private static string Numbers(StudyPlan plan)
    {
        var numbers = plan.Rows.Select(row => row.Specimens).Distinct().ToArray();
        var days = NumberText.Count(plan.Days);
        return numbers is [var same]
            ? $", {NumberText.Count(same)} specimens a time on {days} days"
            : $", on {days} days";
    }

    private static IEnumerable<Row> Rows(StudyPlan plan, PlannedRow row)
    {
        if (plan.Rows.Length > 1)
        {
            yield return new Row([new TableCell(Heading(plan, row))], RowKind.GroupHeading);
        }

        var until = new List<string>();
        foreach (var point in row.TimePoints)
        {
            until.Add(point.TimePoint.ToString());
            yield return point.Gap is { } gap
                ? new Row([
                    new TableCell(until[^1]),
                    new TableCell(ChanceWords.Change(point.Expected)),
                    new TableCell("not simulated"),
                    new TableCell(""),
                    new TableCell(ChanceWords.Gap(gap)),
                    new TableCell(string.Join(", ", until)),
                ])
                : new Row([
                    new TableCell(until[^1]),
                    new TableCell(ChanceWords.Change(point.Expected)),
                    Chance(point, 0),
                    Chance(point, 0.5),
                    Chance(point, 1),
                    new TableCell(string.Join(", ", until)),
                ]);
        }
    }

    /// <summary>The chance with a share of the expected change; a dash without one.</summary>
    public static TableCell Chance(PlannedTimePoint point, double share) =>
        new(
            point.Chances.FirstOrDefault(item => item.ShareOfExpected == share)
                is { Together.Probability: var chance }
                ? ChanceWords.Percent(chance)
                : "–"
        );

    private static string Heading(StudyPlan plan, PlannedRow row) =>
        plan.Rows.Select(item => item.Specimens).Distinct().Count() > 1
            ? $"{Name(plan, row)}, {NumberText.Count(row.Specimens)} specimens"
            : Name(plan, row);
}

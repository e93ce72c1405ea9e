using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The chance that a time and every earlier one are supported.</summary>
internal static class JointTable
{
    public static Table Of(StudyPlan plan) =>
        new(
            "Chance that a time and every earlier one are supported",
            [
                new Column("Up to", ColumnAlignment.Left, 1),
                new Column("If nothing changes", ColumnAlignment.Left, 1.6),
                new Column("Half as published", ColumnAlignment.Left, 1.6),
                new Column("As published", ColumnAlignment.Left, 1.6),
            ],
            [.. plan.Rows.Where(row => !row.Joint.IsEmpty).SelectMany(row => Rows(plan, row))],
            "The same specimens at every time; one that changes much at one time does so at all."
        );

    private static IEnumerable<Row> Rows(StudyPlan plan, PlannedRow row)
    {
        yield return new Row([new TableCell(ChanceTable.Name(plan, row))], RowKind.GroupHeading);
        foreach (var point in row.TimePoints)
        {
            TableCell At(double share) =>
                new(
                    row.Joint.FirstOrDefault(item =>
                        item.TimePoint == point.TimePoint && item.ShareOfExpected == share
                    )
                        is { Chance.Probability: var chance }
                        ? ChanceWords.Percent(chance)
                        : "–"
                );
            yield return new Row([
                new TableCell(point.TimePoint.ToString()),
                At(0),
                At(0.5),
                At(1),
            ]);
        }
    }
}

using StabilityStudy.Core.Planning;
using StabilityStudy.Reporting.Report.Plan;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>Whose specimens wait how long, and what is likely to come out: the first table of the document.</summary>
internal static class ExpectedTable
{
    private const int MostRows = 14;

    public static Table Of(StudyPlan plan) =>
        new(
            "Whose specimens, how long they wait, and what is likely to come out",
            [
                new Column(Head(plan), ColumnAlignment.Left, NamesGroups(plan) ? 2.6 : 1),
                new Column("Today's rule", ColumnAlignment.Left, 0.7),
                new Column("Waited", ColumnAlignment.Left, IsLong(plan) ? 1.5 : 0.9),
                new Column("Published change", ColumnAlignment.Left, 1.3),
                new Column("No true change", ColumnAlignment.Right, 1.1),
                new Column("Half of published", ColumnAlignment.Right, 1.1),
                new Column("All of published", ColumnAlignment.Right, 1.1),
                new Column("What follows", ColumnAlignment.Left, 1.6),
            ],
            [
                .. plan.Rows.SelectMany(row =>
                    IsLong(plan) ? [InOneRow(plan, row)] : Rows(plan, row)
                ),
            ],
            Note(plan)
        );

    /// <summary>Whether each analyte and group has one row for all of its times, so that the page still holds what is decided on.</summary>
    private static bool IsLong(StudyPlan plan) =>
        plan.Rows.Sum(row => row.TimePoints.Length) > MostRows;

    private static bool NamesGroups(StudyPlan plan) =>
        plan.Protocol.Groups.Length > 1 || plan.Protocol.Analytes.Length == 1;

    private static string Head(StudyPlan plan) =>
        !NamesGroups(plan) ? "Analyte, specimens"
        : plan.Protocol.Analytes.Length > 1 ? "Analyte, group, specimens"
        : "Group, specimens";

    private static string Name(StudyPlan plan, PlannedRow row) =>
        string.Join(
            ", ",
            new[]
            {
                plan.Protocol.Analytes.Length > 1 ? row.Analyte.Id : "",
                plan.Protocol.Groups.Length > 1 ? TradeWords.InSentence(row.Group.Name)
                : plan.Protocol.Analytes.Length == 1 ? row.Group.Name
                : "",
                plan.Protocol.Storages.Length > 1 ? row.Storage.Id : "",
                NumberText.Count(row.Specimens),
            }.Where(part => part.Length > 0)
        );

    private static IEnumerable<Row> Rows(StudyPlan plan, PlannedRow row)
    {
        var name = new TableCell(Name(plan, row));
        var rule = new TableCell(
            DurationText.FormatWindow(
                row.Analyte.StandardWindowOf(row.Group.Id, row.Storage.Id).Time
            )
        );
        if (row.TimePoints.All(point => point.Gap is not null))
        {
            return
            [
                new Row([
                    name,
                    rule,
                    new TableCell(string.Join(", ", row.TimePoints.Select(item => item.TimePoint))),
                    new TableCell("–"),
                    new TableCell("–"),
                    new TableCell("–"),
                    new TableCell("–"),
                    new TableCell("not simulated"),
                ]),
            ];
        }

        return row.TimePoints.Select(
            (point, i) =>
                new Row([
                    i == 0 ? name : new TableCell(""),
                    i == 0 ? rule : new TableCell(""),
                    new TableCell(point.TimePoint.ToString()),
                    new TableCell(ChanceWords.Change(point.Expected)),
                    ChanceTable.Chance(point, 0),
                    ChanceTable.Chance(point, 0.5),
                    ChanceTable.Chance(point, 1) with
                    {
                        Emphasis = Emphasis.Strong,
                    },
                    new TableCell(Follows(point)),
                ])
        );
    }

    private static Row InOneRow(StudyPlan plan, PlannedRow row)
    {
        const string percent = " %";
        TableCell Joined(Func<PlannedTimePoint, string> text)
        {
            var texts = row.TimePoints.Select(text).ToArray();
            return new(
                texts.Distinct().Count() == 1 ? texts[0]
                : texts.All(item => item.EndsWith(percent, StringComparison.Ordinal))
                    ? string.Join(", ", texts.Select(item => item[..^percent.Length])) + percent
                : string.Join(", ", texts)
            );
        }

        return new([
            new TableCell(Name(plan, row)),
            new TableCell(
                DurationText.FormatWindow(
                    row.Analyte.StandardWindowOf(row.Group.Id, row.Storage.Id).Time
                )
            ),
            new TableCell(string.Join(", ", row.TimePoints.Select(point => point.TimePoint))),
            Joined(point => ChanceWords.Change(point.Expected)),
            Joined(point => ChanceTable.Chance(point, 0).Text),
            Joined(point => ChanceTable.Chance(point, 0.5).Text),
            Joined(point => ChanceTable.Chance(point, 1).Text) with
            {
                Emphasis = Emphasis.Strong,
            },
            new TableCell(
                string.Join(
                    "; ",
                    Runs(row.TimePoints)
                        .Select(run =>
                            run.Length == row.TimePoints.Length
                                ? Follows(run[0])
                                : $"{Follows(run[0])} {string.Join(", ", run.Select(point => point.TimePoint))}"
                        )
                )
            ),
        ]);
    }

    /// <summary>Time points one after the other that have the same word.</summary>
    private static IEnumerable<ImmutableArray<PlannedTimePoint>> Runs(
        ImmutableArray<PlannedTimePoint> points
    )
    {
        for (var i = 0; i < points.Length; )
        {
            var word = Follows(points[i]);
            var run = points[i..].TakeWhile(point => Follows(point) == word).ToImmutableArray();
            yield return run;
            i += run.Length;
        }
    }

    private static string Follows(PlannedTimePoint point) =>
        point switch
        {
            { WithAll.Together.Probability: var chance } => ChanceWords.Word(
                ChancesOfSupport.Of(chance)
            ),
            { WithoutChange.Together.Probability: var chance } => ChanceWords.Word(
                ChancesOfSupport.Of(chance)
            ) + " if nothing changes",
            _ => "not simulated",
        };

    private static string Note(StudyPlan plan)
    {
        var gaps = plan
            .Rows.Where(row => row.TimePoints[0].Gap is not null)
            .GroupBy(row => row.TimePoints[0].Gap!.Value)
            .Select(gap =>
                $" Not simulated: {string.Join(", ", gap.Select(row => row.Analyte.Id).Distinct())}, because {ChanceWords.Gap(gap.Key)}."
            );
        return $"Chance of “supported” with {NumberText.Count(plan.Days)} collection days{Group(plan)}. {ChanceWords.Bounds}. Each time is on its own; a later one also needs every earlier one of its row. The chances plan the study and decide nothing.{string.Concat(gaps)}{Instruments(plan.Protocol)}";
    }

    private static string Group(StudyPlan plan) =>
        plan.Protocol is { Groups: [var only], Analytes.Length: > 1 }
            ? ", " + TradeWords.InSentence(only.Name)
            : "";

    private static string Instruments(StudyProtocol protocol) =>
        protocol.Instruments.IsEmpty
            ? ""
            : $" The numbers are those of each of {ScopeWords.List(protocol.Instruments)}.";
}

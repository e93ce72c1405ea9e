using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>What costs the chance of one time point, and what would raise it.</summary>
internal static class PlanDetailBlocks
{
    /// <summary>A criterion that is met in nearly every study costs nothing worth naming.</summary>
    private const double Costs = 0.95;

    /// <summary>Smaller gains lie within what simulation leaves open.</summary>
    private const double Gain = 0.03;

    public static IEnumerable<Block> Of(StudyPlan plan, PlanDetail detail)
    {
        var row = plan.Rows.Single(item =>
            item.Analyte.Id == detail.Key.Analyte
            && item.Group.Id == detail.Key.Group
            && item.Storage.Id == detail.Key.Storage
        );
        yield return ByCriterion(plan, row, detail);
        if (detail.Chance.Costs.Length > 0)
        {
            yield return new Paragraph(
                "What keeps criteria from being met, in percent of the simulated studies: "
                    + string.Join(
                        "; ",
                        detail.Chance.Costs.Select(item =>
                            $"{ChanceWords.Of(item.Cost)} {ChanceWords.Percent(item.Rate)}"
                        )
                    )
                    + "."
                    + Rounding(detail),
                ParagraphStyle.Body
            );
        }

        yield return Raising(detail);
        yield return new Paragraph(Smallest(detail), ParagraphStyle.Body);
    }

    private static Table ByCriterion(StudyPlan plan, PlannedRow row, PlanDetail detail)
    {
        var least = detail.Chance.ByCriterion.Min(item => item.Simulated.Probability);
        return new(
            $"By criterion, {ChanceTable.Name(plan, row)}, {detail.Key.TimePoint}, all of the published change",
            [
                new Column("Criterion", ColumnAlignment.Left, 1.2),
                new Column("Chance", ColumnAlignment.Left, 1),
                new Column("By formula", ColumnAlignment.Left, 1),
                new Column("", ColumnAlignment.Left, 3),
            ],
            [
                .. detail.Chance.ByCriterion.Select(item => new Row([
                    new TableCell(item.Criterion),
                    new TableCell(ChanceWords.Percent(item.Simulated.Probability)),
                    new TableCell(item.Exact is { } exact ? ChanceWords.Percent(exact) : "–"),
                    new TableCell(
                        string.Join(
                            "; ",
                            new[]
                            {
                                item.Simulated.Probability == least && least < Costs
                                    ? "costs the chance"
                                    : "",
                                Allowed(row, item.Criterion),
                            }.Where(text => text.Length > 0)
                        )
                    ),
                ])),
            ],
            "By formula: each specimen on its own, without what days and runs share and without skewness; – where there is none."
        );
    }

    /// <summary>How many may fail: "2 of 40 may be outside".</summary>
    public static string Allowed(PlannedRow row, string criterion) =>
        row.Shares.FirstOrDefault(item => item.Criterion == criterion) is not { } share ? ""
        : share.Allowed is { } allowed
            ? $"{NumberText.Count(allowed)} of {NumberText.Count(share.Specimens)} may fail ({NumberText.Plain(share.SharePercent)} % must be shown; {NumberText.Count(allowed + 1)} from {NumberText.Count(share.NextSpecimens)} on)"
        : $"{NumberText.Count(share.Specimens)} are too few: {NumberText.Plain(share.SharePercent)} % need {NumberText.Count(share.NextSpecimens)} with none failing";

    private static string Rounding(PlanDetail detail) =>
        detail.Alternatives.FirstOrDefault(item => item.What == AlternativeKind.OneMoreDecimal)
            is { } finer
        && finer.Chance.Probability - detail.Chance.Together.Probability >= Gain
            ? $" Rounding costs the rest: with one decimal more it would be {ChanceWords.Percent(finer.Chance.Probability)}."
            : "";

    private static Table Raising(PlanDetail detail) =>
        new(
            "What would raise it",
            [
                new Column("Otherwise", ColumnAlignment.Left, 3),
                new Column("Chance", ColumnAlignment.Left, 1),
                new Column("", ColumnAlignment.Left, 2),
            ],
            [
                .. detail
                    .Alternatives.Where(item => item.What != AlternativeKind.OneMoreDecimal)
                    .Select(item => new Row([
                        new TableCell(
                            $"{NumberText.Count(item.Specimens)} specimens on {NumberText.Count(item.Days)} days"
                                + (
                                    item.What == AlternativeKind.Duplicates
                                        ? ", each result the mean of two"
                                        : ""
                                )
                        ),
                        new TableCell(ChanceWords.Percent(item.Chance.Probability)),
                        new TableCell(
                            item.Chance.Probability < detail.Chance.Together.Probability - Gain
                                ? "worse"
                            : item.Chance.Probability < detail.Chance.Together.Probability + Gain
                                ? "no gain"
                            : ""
                        ),
                    ])),
            ],
            null
        );

    private static string Smallest(PlanDetail detail)
    {
        var most = NumberText.Count(PlanAlternatives.MostSpecimens);
        return (detail.For80, detail.For90) switch
        {
            (null, _) =>
                $"No number of specimens up to {most}, as many a day as planned, gives a chance of 80 %: ask a shorter time, or a smaller question.",
            ({ } first, null) =>
                $"Smallest number for 80 %: {NumberText.Count(first)} specimens, as many a day as planned; for 90 % none up to {most}.",
            ({ } first, { } second) =>
                $"Smallest number for 80 %: {NumberText.Count(first)} specimens; for 90 %: {NumberText.Count(second)}, as many a day as planned.",
        };
    }
}

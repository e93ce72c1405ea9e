using StabilityStudy.Core.Criteria.Drift;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The change that each declared shape of drift predicts at the planned delay.</summary>
internal static class DriftCriterionTable
{
    public static Table Of(DriftCriterionResult result) =>
        new(
            $"Fitted change at the planned delay, by declared shape (criterion {result.Criterion})",
            [
                new Column("Shape", ColumnAlignment.Left, 1.2),
                new Column("Specimens", ColumnAlignment.Right, 0.9),
                new Column(
                    $"Change and {NumberText.Percent(result.ConfidenceLevel)} interval, %",
                    ColumnAlignment.Left,
                    2.2
                ),
                new Column("Allowed", ColumnAlignment.Left, 0.9),
                new Column("Verdict", ColumnAlignment.Left, 1.2),
                new Column("Reason", ColumnAlignment.Left, 3.6),
            ],
            [.. result.Shapes.Select(Row)],
            "Fitted from the mean baseline delay, over this time point and the earlier ones; every shape must pass."
        );

    private static Row Row(ShapeResult shape)
    {
        return new Row([
            new TableCell(TradeWords.Of(shape.Shape)),
            new TableCell(
                shape.Slope.TryGet(out var slope) ? NumberText.Count(slope.SpecimenCount) : ""
            ),
            new TableCell(DriftWords.Predicted(shape) ?? "not computable"),
            new TableCell($"±{NumberText.Plain((decimal)shape.LimitPercent)} %"),
            new TableCell(
                TradeWords.Of(shape.Verdict),
                Emphasis.Strong,
                TradeWords.ShapeOf(shape.Verdict)
            ),
            new TableCell(ReasonWords.Of(shape.Reason) + "."),
        ]);
    }
}

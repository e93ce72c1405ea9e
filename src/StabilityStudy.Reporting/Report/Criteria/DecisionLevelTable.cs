using StabilityStudy.Core.Criteria.DecisionLevel;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The change predicted at each decision level that a criterion names.</summary>
internal static class DecisionLevelTable
{
    public static Table Of(DecisionLevelResult result, SequenceNames names) =>
        new(
            $"Change predicted at decision levels, in {names.Analyte.ShownUnit} (criterion {result.Criterion})",
            [
                new Column("Level", ColumnAlignment.Left, 0.8),
                new Column("Baselines below, above", ColumnAlignment.Left, 1.3),
                new Column("Predicted change", ColumnAlignment.Left, 1.2),
                new Column(
                    $"{NumberText.Percent(result.ConfidenceLevel)} interval",
                    ColumnAlignment.Left,
                    1.9
                ),
                new Column("By the worse side, %", ColumnAlignment.Left, 2.6),
                new Column("Allowed", ColumnAlignment.Left, 0.9),
                new Column("Verdict", ColumnAlignment.Left, 1.2),
            ],
            [.. result.Levels.Select(level => Row(level, names))],
            result.Levels.IsEmpty
                ? "The criterion names no level."
                : "By the worse side: the change at the level when the line may step there, so that specimens below it, and those at or above it, answer for themselves; both must be inside too."
        );

    private static Row Row(LevelResult level, SequenceNames names)
    {
        string Against(double change) =>
            NumberText.ChangeAgainstLimits(
                change,
                -level.Allowed,
                level.Allowed,
                names.EstimateDecimals
            );
        var change = level.Change.Value;
        return new Row([
            new TableCell(NumberText.Plain(level.Level)),
            new TableCell(
                $"{NumberText.Count(level.BaselinesBelow)}, {NumberText.Count(level.BaselinesAbove)}"
            ),
            new TableCell(change is null ? "not computable" : Against(change.Bias)),
            new TableCell(
                change is null ? "" : $"{Against(change.Lower)} to {Against(change.Upper)}"
            ),
            new TableCell(
                level.Beside.TryGet(out var beside)
                    ? $"{NumberText.Change(beside.Percent, 1)} ({NumberText.Interval(beside.LowerPercent, beside.UpperPercent, 1)}), {(beside.IsAbove ? "above" : "below")}"
                    : ""
            ),
            new TableCell("±" + NumberText.Fixed(level.Allowed, names.EstimateDecimals)),
            new TableCell(
                TradeWords.Of(level.Verdict),
                Emphasis.Strong,
                TradeWords.ShapeOf(level.Verdict)
            ),
        ]);
    }
}

namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>Delayed against baseline result, with the identity line and the primary regression line.</summary>
internal static class RegressionPlot
{
    public static ChartBlock Of(
        Cell cell,
        SequenceNames names,
        CellAxes axes,
        double heightMillimeters
    ) =>
        new(
            new Chart(
                cell.Key.TimePoint.ToString(),
                axes.Baseline,
                axes.Delayed,
                Layers(cell, names, axes)
            ),
            heightMillimeters,
            AlternativeText(cell, names),
            ""
        );

    private static ImmutableArray<ChartLayer> Layers(Cell cell, SequenceNames names, CellAxes axes)
    {
        var layers = ImmutableArray.CreateBuilder<ChartLayer>();
        var levels = names.Analyte.DecisionLevels;
        var across = DecisionLevels
            .Across(axes.Baseline, LineDirection.Vertical, levels)
            .ToImmutableArray();
        layers.AddRange(across);
        layers.AddRange(
            DecisionLevels.Across(
                axes.Delayed,
                LineDirection.Horizontal,
                levels,
                across.IsEmpty ? "decision level" : null
            )
        );
        layers.Add(
            Line(
                (axes.Baseline.Minimum, axes.Baseline.Maximum),
                0,
                1,
                DashStyle.Dashed,
                "no change"
            )
        );
        var compared = cell.Pairs.Where(pair => pair.ChangePercent is not null).ToImmutableArray();
        if (cell.Estimates.WeightedDeming.TryGet(out var line))
        {
            var baselines = compared.Select(pair => (double)pair.Values().Baseline);
            layers.Add(
                Line(
                    (baselines.Min(), baselines.Max()),
                    line.Intercept.Value,
                    line.Slope.Value,
                    DashStyle.Solid,
                    "weighted Deming line"
                )
            );
        }

        layers.Add(
            new PointLayer(
                [
                    .. compared
                        .Where(pair => !CellAxes.IsOutside(cell, pair))
                        .Select(pair => Point(pair)),
                ],
                MarkerShape.OpenCircle,
                null
            )
        );
        layers.Add(
            new PointLayer(
                [
                    .. compared
                        .Where(pair => CellAxes.IsOutside(cell, pair))
                        .Select(pair => Point(pair)),
                ],
                MarkerShape.FilledSquare,
                null
            )
        );
        return layers.ToImmutable();
    }

    private static ChartPoint Point(PairRecord pair) =>
        new((double)pair.Values().Baseline, (double)pair.Values().Delayed);

    private static LineLayer Line(
        (double From, double To) baselines,
        double intercept,
        double slope,
        DashStyle dash,
        string legend
    )
    {
        Position At(double x) => new(x, intercept + slope * x);
        return new LineLayer(
            [At(baselines.From), At(baselines.To)],
            dash,
            LineWeight.Medium,
            null,
            legend
        );
    }

    private static string AlternativeText(Cell cell, SequenceNames names)
    {
        var line = cell.Estimates.WeightedDeming.TryGet(out var fit)
            ? $" Weighted Deming line: slope {NumberText.Fixed(fit.Slope.Value, 3)}, intercept {NumberText.Change(fit.Intercept.Value, names.EstimateDecimals)} {names.Analyte.ShownUnit}."
            : "";
        return $"Delayed against baseline {names.Analyte.Id} at {cell.Key.TimePoint}, with the line of no change.{line}";
    }
}

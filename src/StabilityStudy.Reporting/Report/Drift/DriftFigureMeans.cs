using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Drift;

/// <summary>The mean of each time point with the interval that decided; where none did on the percent scale, with the describing one, called so.</summary>
internal static class DriftFigureMeans
{
    /// <summary>One layer for each kind of interval that the figure has.</summary>
    public static IEnumerable<ChartLayer> Of(Sequence sequence) =>
        sequence
            .Cells.Select(cell => (Cell: cell, Interval: Deciding(cell)))
            .Select(item =>
                (
                    item.Cell,
                    Interval: item.Interval ?? item.Cell.Estimates.MeanPercent.Value,
                    Decides: item.Interval is not null
                )
            )
            .Where(item => item.Interval is not null)
            .GroupBy(item => (item.Decides, item.Interval!.ConfidenceLevel))
            .Select(group => new IntervalLayer(
                [.. group.Select(item => Interval(item.Cell, item.Interval!))],
                group.Key.Decides ? MarkerShape.FilledSquare : MarkerShape.OpenSquare,
                group.Key.Decides
                    ? $"mean, {NumberText.Percent(group.Key.ConfidenceLevel)} deciding interval"
                    : $"mean, {NumberText.Percent(group.Key.ConfidenceLevel)} interval, not deciding"
            ));

    /// <summary>What the axis of change must hold.</summary>
    public static IEnumerable<double> Ends(Sequence sequence) =>
        sequence
            .Cells.Select(cell => Deciding(cell) ?? cell.Estimates.MeanPercent.Value)
            .OfType<ClusteredMeanInterval>()
            .SelectMany(mean => new[] { mean.Lower, mean.Mean, mean.Upper });

    private static ClusteredMeanInterval? Deciding(Cell cell) =>
        cell.Conclusion == Conclusion.NotAssessed ? null : cell.DecidingMeanPercent;

    private static ChartInterval Interval(Cell cell, ClusteredMeanInterval mean) =>
        new(
            DriftFigure.ComparedChanges(cell).Average(item => item.Hours),
            mean.Lower,
            mean.Mean,
            mean.Upper
        );
}

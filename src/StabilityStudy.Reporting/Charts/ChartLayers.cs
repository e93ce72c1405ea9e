using System.Diagnostics;
using ScottPlot;
using ScottPlot.Plottables;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Puts the layers of a chart into a plot, all but the markers.</summary>
internal static class ChartLayers
{
    /// <summary>Adds every layer, the first one at the back.</summary>
    public static void Add(Chart chart, Plot plot)
    {
        foreach (var layer in chart.Layers)
        {
            Add(layer, chart, plot);
        }
    }

    private static void Add(ChartLayer layer, Chart chart, Plot plot)
    {
        switch (layer)
        {
            case BandLayer band:
                AddBand(band, plot);
                break;
            case TrajectoriesLayer trajectories:
                foreach (var line in trajectories.Lines)
                {
                    AddLine(line, plot, 0.45f, DashStyle.Solid, ChartStyle.TrajectoryGray);
                }

                break;
            case LineLayer line:
                AddLine(
                    line.Positions,
                    plot,
                    ChartStyle.Width(line.Weight),
                    line.Dash,
                    ChartStyle.Accent
                );
                break;
            case ReferenceLine reference:
                AddReference(reference, chart, plot);
                break;
            case NamedRange range when range.From <= chart.X.Minimum:
            case PointLayer:
                break;
            case NamedRange range:
                AddLine(
                    [
                        new Position(range.From, chart.Y.Minimum),
                        new Position(range.From, chart.Y.Maximum),
                    ],
                    plot,
                    ChartStyle.Width(LineWeight.Thin),
                    DashStyle.Solid,
                    ChartStyle.Ink
                );
                break;
            case IntervalLayer intervals:
                AddIntervals(intervals, plot);
                break;
            default:
                throw new UnreachableException(layer.GetType().Name);
        }
    }

    private static void AddLine(
        IReadOnlyCollection<Position> positions,
        Plot plot,
        float width,
        DashStyle dash,
        Color color
    )
    {
        if (positions.Count == 0)
        {
            return;
        }

        var line = plot.Add.ScatterLine(
            positions.Select(p => new Coordinates(p.X, p.Y)).ToArray(),
            color
        );
        line.LineWidth = width;
        line.LinePattern = ChartStyle.Pattern(dash);
    }

    private static void AddReference(ReferenceLine line, Chart chart, Plot plot)
    {
        var ends =
            line.Direction == LineDirection.Horizontal
                ? new[]
                {
                    new Position(chart.X.Minimum, line.Value),
                    new Position(chart.X.Maximum, line.Value),
                }
                :
                [
                    new Position(line.Value, chart.Y.Minimum),
                    new Position(line.Value, chart.Y.Maximum),
                ];
        AddLine(ends, plot, ChartStyle.Width(line.Weight), line.Dash, ChartStyle.Ink);
    }

    private static void AddBand(BandLayer band, Plot plot)
    {
        if (band.Points.IsEmpty)
        {
            return;
        }

        var outline = band
            .Points.Select(p => new Coordinates(p.X, p.Upper))
            .Concat(band.Points.Reverse().Select(p => new Coordinates(p.X, p.Lower)))
            .ToArray();
        if (band.Fill == BandFill.Hatched)
        {
            plot.Add.Plottable(new HatchedArea(outline));
            return;
        }

        var area = plot.Add.Polygon(outline);
        area.FillStyle.Color = ChartStyle.BandGray;
        area.LineStyle.Width = 0;
    }

    private static void AddIntervals(IntervalLayer layer, Plot plot)
    {
        var bars = new ErrorBar(
            [.. layer.Intervals.Select(i => i.X)],
            [.. layer.Intervals.Select(i => i.Estimate)],
            xErrorsPositive: null,
            xErrorsNegative: null,
            yErrorsPositive: [.. layer.Intervals.Select(i => i.Upper - i.Estimate)],
            yErrorsNegative: [.. layer.Intervals.Select(i => i.Estimate - i.Lower)]
        )
        {
            Color = ChartStyle.Ink,
            CapSize = 2.4f,
            LineWidth = 0.9f,
        };
        plot.Add.Plottable(bars);
    }
}

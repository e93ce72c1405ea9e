using ScottPlot;
using ScottPlot.Rendering.RenderActions;
using ScottPlot.TickGenerators;
using SkiaSharp;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Draws one chart: frame, ticks and layers by the plot library; names and legend around the frame by us.</summary>
internal static class ChartDrawing
{
    /// <summary>Draws the chart into the upper left corner of the canvas.</summary>
    public static void Draw(SizedChart sized, SKCanvas canvas)
    {
        var margins = ChartMargins.Of(sized);
        using var plot = Frame(sized.Chart, margins);
        ChartLayers.Add(sized.Chart, plot);
        RenderOnce(plot, sized, canvas);
        var frame = margins.Frame(sized);
        ObservationMarks.Draw(sized.Chart, frame, canvas);
        ChartNames.Draw(sized.Chart, margins, frame, canvas);
        ChartLegend.Draw(sized, margins, canvas);
    }

    private static Plot Frame(Chart chart, ChartMargins margins)
    {
        var plot = new Plot();
        plot.HideGrid();
        plot.Layout.Fixed(
            new PixelPadding(
                (float)margins.Left,
                (float)margins.Right,
                (float)margins.Bottom,
                (float)margins.Top
            )
        );
        plot.Axes.SetLimits(chart.X.Minimum, chart.X.Maximum, chart.Y.Minimum, chart.Y.Maximum);
        Style(plot.Axes.Bottom, margins.ShownXTicks);
        Style(plot.Axes.Left, chart.Y.Ticks);
        foreach (var side in new IAxis[] { plot.Axes.Top, plot.Axes.Right })
        {
            side.FrameLineStyle.Width = 0;
            side.MajorTickStyle.Length = 0;
            side.MinorTickStyle.Length = 0;
        }

        return plot;
    }

    private static void Style(IAxis axis, IReadOnlyList<Model.Tick> ticks)
    {
        var ordered = ticks.OrderBy(t => t.Value).ToList();
        axis.TickGenerator = new NumericManual(
            [.. ordered.Select(t => t.Value)],
            [.. ordered.Select(t => PrintableText.For(ReportFonts.Regular, t.Label))]
        );
        axis.FrameLineStyle.Width = 0.7f;
        axis.FrameLineStyle.Color = ChartStyle.Ink;
        axis.MajorTickStyle.Length = 3;
        axis.MajorTickStyle.Width = 0.7f;
        axis.MajorTickStyle.Color = ChartStyle.Ink;
        axis.MinorTickStyle.Length = 0;
        axis.TickLabelStyle.FontName = ReportFonts.Sans;
        axis.TickLabelStyle.FontSize = (float)ChartStyle.Tick.Size;
        axis.TickLabelStyle.ForeColor = ChartStyle.Ink;
    }

    private static void RenderOnce(Plot plot, SizedChart sized, SKCanvas canvas)
    {
        // Clearing and an unseen background would paint rectangles over the page, black ones in SVG; the first render of a plot runs twice to settle its
        // layout, which would write every mark twice, so the first one goes nowhere.
        plot.RenderManager.RenderActions.RemoveAll(a =>
            a is ClearCanvas or RenderFigureBackground or RenderDataBackground
        );
        using var nowhere = new SKNoDrawCanvas(sized.Width, sized.Height);
        plot.Render(nowhere, sized.Width, sized.Height);
        plot.Render(canvas, sized.Width, sized.Height);
    }
}

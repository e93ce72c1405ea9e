using SkiaSharp;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Room around the frame of a chart, in points, and the texts that need it, already broken into lines.</summary>
internal sealed record ChartMargins
{
    /// <summary>Room below the frame for ticks and their labels.</summary>
    public const double TickRoom = 15;

    private const double TickLength = 4;
    private const double Gap = 4;
    private const double LeastFrameShare = 0.4;
    private const double LeastFrameHeight = 36;

    public required double Left { get; init; }
    public required double Right { get; init; }
    public required double Top { get; init; }
    public required double Bottom { get; init; }

    /// <summary>Lines of the title.</summary>
    public required ImmutableArray<string> Title { get; init; }

    /// <summary>Lines of the horizontal axis label.</summary>
    public required ImmutableArray<string> XLabel { get; init; }

    /// <summary>Lines of the vertical axis label.</summary>
    public required ImmutableArray<string> YLabel { get; init; }

    /// <summary>Ticks of the horizontal axis; a label that would touch its neighbor is left empty.</summary>
    public required ImmutableArray<Tick> ShownXTicks { get; init; }

    /// <summary>Legend entries, a row of the legend each.</summary>
    public required ImmutableArray<ImmutableArray<LegendEntry>> LegendRows { get; init; }

    /// <summary>Names at the right edge, with their heights on the vertical axis.</summary>
    public required ImmutableArray<EdgeName> EdgeNames { get; init; }

    /// <summary>Names above the frame, a row each.</summary>
    public required ImmutableArray<ImmutableArray<TopName>> TopNames { get; init; }

    /// <summary>Height of the legend.</summary>
    public double LegendHeight =>
        LegendRows.IsEmpty ? 0 : Gap + (LegendRows.Length * ChartLegend.RowHeight);

    /// <summary>Upper edge of the legend within the chart.</summary>
    public double LegendTop(SizedChart sized) =>
        sized.Height - Bottom + TickRoom + (XLabel.Length * ChartStyle.AxisLabel.Leading) + Gap;

    /// <summary>The frame within the chart.</summary>
    public SKRect Frame(SizedChart sized) =>
        new((float)Left, (float)Top, (float)(sized.Width - Right), (float)(sized.Height - Bottom));

    /// <summary>Measures everything around the frame.</summary>
    public static ChartMargins Of(SizedChart sized)
    {
        var legendNames = sized.NamesInLegend || NamesAreCrowded(sized);
        var first = Measured(sized, sized.LabelLength, legendNames);
        var frameHeight = first.Frame(sized).Height;

        // The vertical axis label may be as long as the frame is high, which is known only now.
        return frameHeight > sized.LabelLength ? Measured(sized, frameHeight, legendNames) : first;
    }

    /// <summary>The same chart, higher if its texts would leave no room for the frame.</summary>
    public static SizedChart WithRoom(SizedChart sized)
    {
        var asked = sized with { NamesInLegend = NamesAreCrowded(sized) };
        var margins = Measured(asked, asked.LabelLength, asked.NamesInLegend);
        var label = Widest(margins.YLabel, ChartStyle.AxisLabel);
        var needed = margins.Top + margins.Bottom + Math.Max(LeastFrameHeight, label);
        return needed <= asked.Height ? asked : asked with { Height = (int)Math.Ceiling(needed) };
    }

    private static bool NamesAreCrowded(SizedChart sized)
    {
        var margins = Measured(sized, sized.LabelLength, namesInLegend: false);
        var frame = margins.Frame(sized);
        var height = margins.EdgeNames.Sum(n => n.Height);
        return !margins.EdgeNames.IsEmpty
            && (
                frame.Width < sized.Width * LeastFrameShare
                || height > frame.Height + (2 * EdgeName.Overhang)
            );
    }

    private static ChartMargins Measured(SizedChart sized, double yLabelLength, bool namesInLegend)
    {
        var chart = sized.Chart;
        var names = namesInLegend ? [] : EdgeName.Of(chart, sized.Width * 0.26);
        var yLabel = Lines(chart.Y.Label, ChartStyle.AxisLabel, yLabelLength);
        var yTicks = Widest(chart.Y.Ticks.Select(t => t.Label), ChartStyle.Tick);
        var left = (yLabel.Length * ChartStyle.AxisLabel.Leading) + Gap + yTicks + TickLength + 3;
        var right = Math.Max(
            Math.Max(6, Widest(chart.X.Ticks.Select(t => t.Label), ChartStyle.Tick) / 2),
            names.IsEmpty
                ? 0
                : EdgeName.LeaderLength
                    + Widest(names.SelectMany(n => n.Lines), ChartStyle.Name)
                    + 2
        );
        var frameWidth = Math.Max(1, sized.Width - left - right);
        var title = Lines(chart.Title, ChartStyle.Title, sized.Width);
        var xLabel = Lines(chart.X.Label, ChartStyle.AxisLabel, frameWidth + right);
        var legend = ChartLegend.Rows(chart, sized.Width - left, frameWidth, namesInLegend);
        var topNames = TopName.Rows(chart, left, frameWidth);
        var measured = new ChartMargins
        {
            Left = left,
            Right = right,
            Top = Math.Max(
                sized.LeastTop,
                (title.Length * ChartStyle.Title.Leading)
                    + (topNames.Length * ChartStyle.Name.Leading)
                    + 6
            ),
            Bottom = 0,
            Title = title,
            XLabel = xLabel,
            YLabel = yLabel,
            ShownXTicks = WithoutOverlaps(chart.X, frameWidth),
            LegendRows = legend,
            EdgeNames = names,
            TopNames = topNames,
        };
        return measured with
        {
            Bottom = Math.Max(
                sized.LeastBottom,
                TickRoom
                    + (xLabel.Length * ChartStyle.AxisLabel.Leading)
                    + measured.LegendHeight
                    + 1
            ),
        };
    }

    private static double Widest(IEnumerable<string> texts, TextStyle style) =>
        texts.Select(style.Width).DefaultIfEmpty(0).Max();

    private static ImmutableArray<string> Lines(string text, TextStyle style, double width) =>
        text.Length == 0 ? [] : LineBreaking.Break(text, style, width);

    private static ImmutableArray<Tick> WithoutOverlaps(Axis axis, double width)
    {
        var shown = ImmutableArray.CreateBuilder<Tick>();
        var free = double.NegativeInfinity;
        foreach (var tick in axis.Ticks.OrderBy(t => t.Value))
        {
            var middle = width * (tick.Value - axis.Minimum) / (axis.Maximum - axis.Minimum);
            var half = ChartStyle.Tick.Width(tick.Label) / 2;
            var fits = middle - half >= free;
            shown.Add(fits ? tick : tick with { Label = "" });
            free = fits ? middle + half + Gap : free;
        }

        return shown.ToImmutable();
    }
}

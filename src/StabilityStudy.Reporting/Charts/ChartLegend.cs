using System.Diagnostics;
using ScottPlot;
using SkiaSharp;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>A layer with its explanation, broken into lines.</summary>
internal sealed record LegendEntry(ChartLayer Layer, ImmutableArray<string> Lines, double Width);

/// <summary>The legend below a chart: a sample of each layer and what it is.</summary>
internal static class ChartLegend
{
    /// <summary>Height of a row in points.</summary>
    public const double RowHeight = 9.2;

    private const double SampleWidth = 18;
    private const double Gap = 10;

    /// <summary>Distributes the entries over rows; an explanation wider than the chart takes several rows.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="width">Width of the legend in points.</param>
    /// <param name="frameWidth">Width of the frame; names of vertical lines too long for it stand here.</param>
    /// <param name="withNames">Whether names that stand beside the frame otherwise stand here.</param>
    public static ImmutableArray<ImmutableArray<LegendEntry>> Rows(
        Chart chart,
        double width,
        double frameWidth,
        bool withNames
    )
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<LegendEntry>>();
        var row = ImmutableArray.CreateBuilder<LegendEntry>();
        var used = 0.0;
        foreach (var layer in chart.Layers)
        {
            if (Text(layer, frameWidth, withNames) is not { Length: > 0 } text)
            {
                continue;
            }

            var lines = LineBreaking.Break(text, ChartStyle.Name, width - SampleWidth - 4);
            var wide = SampleWidth + 4 + lines.Max(ChartStyle.Name.Width);
            if (row.Count > 0 && (used + Gap + wide > width || lines.Length > 1))
            {
                rows.Add(row.ToImmutable());
                row.Clear();
                used = 0;
            }

            row.Add(new LegendEntry(layer, lines[..1], wide));
            used += (used > 0 ? Gap : 0) + wide;
            foreach (var line in lines[1..])
            {
                rows.Add(row.ToImmutable());
                row.Clear();
                row.Add(new LegendEntry(layer, [line], 0));
                used = width;
            }
        }

        if (row.Count > 0)
        {
            rows.Add(row.ToImmutable());
        }

        return rows.ToImmutable();
    }

    /// <summary>Draws the legend at the foot of the chart.</summary>
    public static void Draw(SizedChart sized, ChartMargins margins, SKCanvas canvas)
    {
        var top = margins.LegendTop(sized);
        foreach (var row in margins.LegendRows)
        {
            var x = margins.Left;
            foreach (var entry in row)
            {
                var middle = top + (RowHeight / 2);
                if (entry.Width > 0)
                {
                    DrawSample(entry.Layer, (float)x, (float)middle, canvas);
                }

                ChartText.DrawLines(
                    entry.Lines,
                    ChartStyle.Name,
                    x + SampleWidth + 4,
                    middle - (ChartStyle.Name.Leading / 2),
                    SKTextAlign.Left,
                    canvas
                );
                x += entry.Width + Gap;
            }

            top += RowHeight;
        }
    }

    private static string Text(ChartLayer layer, double frameWidth, bool withNames)
    {
        var name = layer.Name switch
        {
            { Place: NamePlace.Edge, Text: var text } when withNames => text,
            { Place: NamePlace.Top, Text: var text } when !TopName.IsShort(text, frameWidth) =>
                text,
            _ => null,
        };
        return string.Join("; ", new[] { name, layer.Legend }.Where(t => t is { Length: > 0 }));
    }

    private static void DrawSample(ChartLayer layer, float x, float y, SKCanvas canvas)
    {
        var right = x + (float)SampleWidth;
        var middle = x + ((float)SampleWidth / 2);
        var (from, to) = (new SKPoint(x, y), new SKPoint(right, y));
        switch (layer)
        {
            case PointLayer points:
                MarkerPath.Draw(points.Marker, middle, y, canvas);
                break;
            case IntervalLayer intervals:
                DrawLine(
                    new SKPoint(middle, y - 4),
                    new SKPoint(middle, y + 4),
                    LineWeight.Medium,
                    DashStyle.Solid,
                    ChartStyle.Ink,
                    canvas
                );
                MarkerPath.Draw(intervals.Marker, middle, y, canvas);
                break;
            case LineLayer line:
                DrawLine(from, to, line.Weight, line.Dash, ChartStyle.Accent, canvas);
                break;
            case ReferenceLine line:
                DrawLine(from, to, line.Weight, line.Dash, ChartStyle.Ink, canvas);
                break;
            case TrajectoriesLayer:
                DrawTrajectory(x, y, right, canvas);
                break;
            case BandLayer band:
                DrawBand(band, new SKRect(x, y - 3, right, y + 3), canvas);
                break;
            case NamedRange:
                break;
            default:
                throw new UnreachableException(layer.GetType().Name);
        }
    }

    private static void DrawTrajectory(float left, float y, float right, SKCanvas canvas)
    {
        using var paint = new SKPaint
        {
            Color = ChartStyle.Skia(ChartStyle.TrajectoryGray),
            StrokeWidth = 0.8f,
        };
        canvas.DrawLine(left, y + 2, right, y - 2, paint);
    }

    private static void DrawBand(BandLayer band, SKRect area, SKCanvas canvas)
    {
        using var path = new SKPath();
        path.AddRect(area);
        if (band.Fill == BandFill.Hatched)
        {
            HatchedArea.Fill(path, area, canvas);
            return;
        }

        using var paint = new SKPaint { Color = ChartStyle.Skia(ChartStyle.BandGray) };
        canvas.DrawPath(path, paint);
    }

    private static void DrawLine(
        SKPoint from,
        SKPoint to,
        LineWeight weight,
        DashStyle dash,
        Color color,
        SKCanvas canvas
    )
    {
        using var paint = new SKPaint
        {
            Color = ChartStyle.Skia(color),
            Style = SKPaintStyle.Stroke,
            StrokeWidth = ChartStyle.Width(weight),
            PathEffect = ChartStyle.Pattern(dash).GetPathEffect(),
        };
        canvas.DrawLine(from, to, paint);
    }
}

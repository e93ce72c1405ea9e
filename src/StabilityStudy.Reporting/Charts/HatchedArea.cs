using ScottPlot;
using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>An area filled with slanted lines as vectors; the plot library's own hatching is a bitmap.</summary>
internal sealed class HatchedArea(Coordinates[] outline) : IPlottable
{
    private const float Distance = 4.2f;

    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        using var path = new SKPath();
        path.AddPoly([.. outline.Select(c => Axes.GetPixel(c)).Select(p => new SKPoint(p.X, p.Y))]);
        var frame = new SKRect(
            rp.DataRect.Left,
            rp.DataRect.Top,
            rp.DataRect.Right,
            rp.DataRect.Bottom
        );
        Fill(path, frame, rp.Canvas);
    }

    /// <summary>Draws the lines and the outline inside both the path and the frame.</summary>
    public static void Fill(SKPath path, SKRect frame, SKCanvas canvas)
    {
        using var paint = new SKPaint
        {
            Color = ChartStyle.Skia(ChartStyle.HatchGray),
            Style = SKPaintStyle.Stroke,
            StrokeWidth = 0.4f,
        };
        canvas.Save();
        canvas.ClipRect(frame);
        canvas.DrawPath(path, paint);
        canvas.ClipPath(path);
        for (
            var x = MathF.Floor((frame.Left - frame.Height) / Distance) * Distance;
            x < frame.Right;
            x += Distance
        )
        {
            canvas.DrawLine(x, frame.Bottom, x + frame.Height, frame.Top, paint);
        }

        canvas.Restore();
    }
}

using System.Diagnostics;
using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Outlines of the markers, with about the same area each.</summary>
internal static class MarkerPath
{
    /// <summary>Draws a marker around a place of the canvas.</summary>
    public static void Draw(MarkerShape marker, float x, float y, SKCanvas canvas)
    {
        using var path = Outline(marker, x, y, ChartStyle.MarkerRadius);
        using var paint = new SKPaint
        {
            Color = ChartStyle.Skia(ChartStyle.Ink),
            IsAntialias = true,
            Style = ChartStyle.IsFilled(marker) ? SKPaintStyle.Fill : SKPaintStyle.Stroke,
            StrokeWidth = 0.7f,
        };
        canvas.DrawPath(path, paint);
    }

    private static SKPath Outline(MarkerShape marker, float x, float y, float r)
    {
        var path = new SKPath();
        switch (marker)
        {
            case MarkerShape.OpenCircle or MarkerShape.FilledCircle:
                path.AddCircle(x, y, r);
                break;
            case MarkerShape.OpenSquare or MarkerShape.FilledSquare:
                path.AddRect(
                    new SKRect(x - (r * 0.9f), y - (r * 0.9f), x + (r * 0.9f), y + (r * 0.9f))
                );
                break;
            case MarkerShape.OpenTriangle or MarkerShape.FilledTriangle:
                path.AddPoly([
                    new(x, y - (r * 1.2f)),
                    new(x + (r * 1.1f), y + (r * 0.8f)),
                    new(x - (r * 1.1f), y + (r * 0.8f)),
                ]);
                break;
            case MarkerShape.OpenDiamond or MarkerShape.FilledDiamond:
                path.AddPoly([
                    new(x, y - (r * 1.3f)),
                    new(x + (r * 1.3f), y),
                    new(x, y + (r * 1.3f)),
                    new(x - (r * 1.3f), y),
                ]);
                break;
            case MarkerShape.Cross:
                path.MoveTo(x - r, y - r);
                path.LineTo(x + r, y + r);
                path.MoveTo(x - r, y + r);
                path.LineTo(x + r, y - r);
                break;
            default:
                throw new UnreachableException();
        }

        return path;
    }
}

using SkiaSharp;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Writes text into a chart; it stays text in the PDF.</summary>
internal static class ChartText
{
    /// <summary>Writes one line with its baseline at the given place.</summary>
    public static void Draw(
        string text,
        TextStyle style,
        double x,
        double baseline,
        SKTextAlign align,
        SKCanvas canvas
    )
    {
        if (text.Length == 0)
        {
            return;
        }

        using var font = new SKFont(style.Face.Typeface, (float)style.Size)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
        };
        using var paint = new SKPaint { Color = ChartStyle.Skia(ChartStyle.Ink) };
        canvas.DrawText(
            PrintableText.For(style.Face, text),
            (float)x,
            (float)baseline,
            align,
            font,
            paint
        );
    }

    /// <summary>Writes lines below each other, the first one's top at the given height.</summary>
    public static void DrawLines(
        IReadOnlyList<string> lines,
        TextStyle style,
        double x,
        double top,
        SKTextAlign align,
        SKCanvas canvas
    )
    {
        for (var i = 0; i < lines.Count; i++)
        {
            Draw(lines[i], style, x, top + (i * style.Leading) + style.Ascent, align, canvas);
        }
    }
}

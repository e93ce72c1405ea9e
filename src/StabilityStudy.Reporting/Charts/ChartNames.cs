using SkiaSharp;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Writes everything around and beside the marks: title, axis labels, names of lines and of points.</summary>
internal static class ChartNames
{
    /// <summary>Writes all names of a chart.</summary>
    public static void Draw(Chart chart, ChartMargins margins, SKRect frame, SKCanvas canvas)
    {
        ChartText.DrawLines(margins.Title, ChartStyle.Title, 0, 0, SKTextAlign.Left, canvas);
        ChartText.DrawLines(
            margins.XLabel,
            ChartStyle.AxisLabel,
            frame.MidX,
            frame.Bottom + ChartMargins.TickRoom,
            SKTextAlign.Center,
            canvas
        );
        canvas.Save();
        canvas.Translate(0, frame.MidY);
        canvas.RotateDegrees(-90);
        ChartText.DrawLines(margins.YLabel, ChartStyle.AxisLabel, 0, 0, SKTextAlign.Center, canvas);
        canvas.Restore();
        for (var row = 0; row < margins.TopNames.Length; row++)
        {
            var top = frame.Top - 2 - ((row + 1) * ChartStyle.Name.Leading);
            foreach (var name in margins.TopNames[row])
            {
                ChartText.DrawLines(
                    [name.Text],
                    ChartStyle.Name,
                    name.Middle,
                    top,
                    SKTextAlign.Center,
                    canvas
                );
            }
        }

        EdgeName.Draw(margins.EdgeNames, chart.Y, frame, canvas);
        PointNames.Draw(chart, frame, canvas);
    }
}

using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>From the units of the axes to places in the frame.</summary>
internal static class ChartPlaces
{
    /// <summary>The place of a position; outside the frame when the position is outside the axes.</summary>
    public static SKPoint Of(double x, double y, Chart chart, SKRect frame) =>
        new(
            frame.Left + (frame.Width * Share(x, chart.X)),
            frame.Bottom - (frame.Height * Share(y, chart.Y))
        );

    private static float Share(double value, Axis axis) =>
        (float)((value - axis.Minimum) / (axis.Maximum - axis.Minimum));
}

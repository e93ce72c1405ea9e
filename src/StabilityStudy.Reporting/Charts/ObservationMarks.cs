using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>
/// Draws the markers of observations over everything else and without cutting them at the frame, so that none is
/// hidden or halved.
/// </summary>
internal static class ObservationMarks
{
    /// <summary>Draws the markers of all layers in order.</summary>
    public static void Draw(Chart chart, SKRect frame, SKCanvas canvas)
    {
        foreach (var layer in chart.Layers)
        {
            foreach (var (marker, position) in layer.Observations())
            {
                var place = ChartPlaces.Of(position.X, position.Y, chart, frame);
                MarkerPath.Draw(marker, place.X, place.Y, canvas);
            }
        }
    }
}

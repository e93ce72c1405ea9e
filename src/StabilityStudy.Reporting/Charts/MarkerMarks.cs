using System.Collections.Immutable;
using ScottPlot;
using MarkerShape = StabilityStudy.Reporting.Model.MarkerShape;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Markers of one shape; the plot library's own have other proportions when open than when filled.</summary>
internal sealed class MarkerMarks(ImmutableArray<Coordinates> places, MarkerShape marker)
    : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        foreach (var place in places)
        {
            var pixel = Axes.GetPixel(place);
            MarkerPath.Draw(marker, pixel.X, pixel.Y, rp.Canvas);
        }
    }
}

using System.Diagnostics;
using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Where the lines of a chart run, as small boxes that a name should avoid.</summary>
internal static class LineMarks
{
    private const int StepsPerSegment = 40;

    /// <summary>Boxes along reference lines, lines and the edges of bands.</summary>
    public static IEnumerable<SKRect> Of(Chart chart, SKRect frame)
    {
        foreach (var layer in chart.Layers)
        {
            if (layer is ReferenceLine reference)
            {
                var place = ChartPlaces.Of(reference.Value, reference.Value, chart, frame);
                yield return reference.Direction == LineDirection.Horizontal
                    ? new SKRect(frame.Left, place.Y - 1, frame.Right, place.Y + 1)
                    : new SKRect(place.X - 1, frame.Top, place.X + 1, frame.Bottom);
            }

            foreach (var box in Lines(layer).SelectMany(l => Along(l, chart, frame)))
            {
                yield return box;
            }
        }
    }

    private static IEnumerable<ImmutableArray<Position>> Lines(ChartLayer layer) =>
        layer switch
        {
            LineLayer line => [line.Positions],
            BandLayer band =>
            [
                [.. band.Points.Select(p => new Position(p.X, p.Lower))],
                [.. band.Points.Select(p => new Position(p.X, p.Upper))],
            ],
            PointLayer or IntervalLayer or ReferenceLine or NamedRange or TrajectoriesLayer => [],
            _ => throw new UnreachableException(layer.GetType().Name),
        };

    private static IEnumerable<SKRect> Along(
        ImmutableArray<Position> line,
        Chart chart,
        SKRect frame
    )
    {
        for (var i = 1; i < line.Length; i++)
        {
            var from = ChartPlaces.Of(line[i - 1].X, line[i - 1].Y, chart, frame);
            var to = ChartPlaces.Of(line[i].X, line[i].Y, chart, frame);
            for (var step = 0; step <= StepsPerSegment; step++)
            {
                var share = (float)step / StepsPerSegment;
                var x = from.X + (share * (to.X - from.X));
                var y = from.Y + (share * (to.Y - from.Y));
                yield return new SKRect(x - 1, y - 1, x + 1, y + 1);
            }
        }
    }
}

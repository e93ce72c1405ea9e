using SkiaSharp;

namespace StabilityStudy.Reporting.Charts;

/// <summary>Writes the names of single points where they cover the least.</summary>
internal static class PointNames
{
    private const float Offset = 4;

    /// <summary>Writes the name of every point that has one.</summary>
    public static void Draw(Chart chart, SKRect frame, SKCanvas canvas)
    {
        var points = chart.Layers.OfType<PointLayer>().SelectMany(l => l.Points).ToList();
        var taken = points.Select(p => Around(ChartPlaces.Of(p.X, p.Y, chart, frame))).ToList();
        taken.AddRange(LineMarks.Of(chart, frame));
        using var paper = new SKPaint { Color = SKColors.White };
        foreach (var point in points.Where(p => p.Label is { Length: > 0 }))
        {
            var label = point.Label ?? "";
            var box = Candidates(ChartPlaces.Of(point.X, point.Y, chart, frame), label)
                .MinBy(b => Cost(b, taken, frame));
            taken.Add(box);

            // Bands and lines stop short of a name, so that it can be read.
            canvas.DrawRect(SKRect.Inflate(box, 0.5f, -0.5f), paper);
            ChartText.DrawLines(
                [label],
                ChartStyle.Name,
                box.Left,
                box.Top,
                SKTextAlign.Left,
                canvas
            );
        }
    }

    private static SKRect Around(SKPoint place) =>
        new(
            place.X - ChartStyle.MarkerRadius,
            place.Y - ChartStyle.MarkerRadius,
            place.X + ChartStyle.MarkerRadius,
            place.Y + ChartStyle.MarkerRadius
        );

    /// <summary>Places in the order of preference: right, left, above, below, then farther corners.</summary>
    private static IEnumerable<SKRect> Candidates(SKPoint place, string label)
    {
        var width = (float)ChartStyle.Name.Width(label);
        var height = (float)ChartStyle.Name.Leading;
        SKRect At(float left, float top) => new(left, top, left + width, top + height);
        var (x, y) = (place.X, place.Y);
        yield return At(x + Offset, y - (height / 2));
        yield return At(x - Offset - width, y - (height / 2));
        yield return At(x - (width / 2), y - Offset - height + 1);
        yield return At(x - (width / 2), y + Offset - 1);
        yield return At(x + 2, y - Offset - height + 1);
        yield return At(x - 2 - width, y - Offset - height + 1);
        yield return At(x + 2, y + Offset - 1);
        yield return At(x - 2 - width, y + Offset - 1);
        yield return At(x + Offset, y - (2 * height));
        yield return At(x + Offset, y + height);
        yield return At(x - Offset - width, y - (2 * height));
        yield return At(x - Offset - width, y + height);
    }

    private static float Cost(SKRect box, List<SKRect> taken, SKRect frame)
    {
        var inside = SKRect.Intersect(box, frame);
        var outside = (box.Width * box.Height) - (inside.Width * inside.Height);
        return (10 * outside) + taken.Sum(t => Overlap(box, t));
    }

    private static float Overlap(SKRect a, SKRect b)
    {
        var both = SKRect.Intersect(a, b);
        return both.Width * both.Height;
    }
}

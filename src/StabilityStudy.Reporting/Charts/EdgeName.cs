using SkiaSharp;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Charts;

/// <summary>The name of a line, written right of the frame at the height where the line ends.</summary>
/// <param name="Value">Height of the line's end on the vertical axis, within the axis.</param>
/// <param name="Lines">The name, broken into lines.</param>
internal sealed record EdgeName(double Value, ImmutableArray<string> Lines)
{
    /// <summary>Length of the leader from the frame to the name, in points.</summary>
    public const double LeaderLength = 9;

    /// <summary>How far names may reach above and below the frame, in points.</summary>
    public const double Overhang = 4;

    /// <summary>Height of the name in points.</summary>
    public double Height => Lines.Length * ChartStyle.Name.Leading;

    /// <summary>The names of a chart's lines, from the top down.</summary>
    public static ImmutableArray<EdgeName> Of(Chart chart, double width)
    {
        var names = ImmutableArray.CreateBuilder<EdgeName>();
        foreach (var layer in chart.Layers)
        {
            if (layer.Name is { Place: NamePlace.Edge } name)
            {
                names.Add(
                    new EdgeName(
                        Math.Clamp(name.Value, chart.Y.Minimum, chart.Y.Maximum),
                        LineBreaking.Break(name.Text, ChartStyle.Name, width)
                    )
                );
            }
        }

        return [.. names.OrderByDescending(n => n.Value)];
    }

    /// <summary>Writes the names, moved apart where they would touch, each tied to its line.</summary>
    public static void Draw(
        ImmutableArray<EdgeName> names,
        Axis axis,
        SKRect frame,
        SKCanvas canvas
    )
    {
        var ends = names
            .Select(n =>
                frame.Bottom
                - (frame.Height * (n.Value - axis.Minimum) / (axis.Maximum - axis.Minimum))
            )
            .ToArray();
        var middles = MovedApart(names, ends, frame);
        using var leader = new SKPaint
        {
            Color = ChartStyle.Skia(ChartStyle.HatchGray),
            StrokeWidth = 0.4f,
            IsAntialias = true,
        };
        for (var i = 0; i < names.Length; i++)
        {
            var right = frame.Right + (float)LeaderLength;
            canvas.DrawLine(frame.Right + 1, (float)ends[i], right - 2, (float)middles[i], leader);
            ChartText.DrawLines(
                names[i].Lines,
                ChartStyle.Name,
                right,
                middles[i] - (names[i].Height / 2),
                SKTextAlign.Left,
                canvas
            );
        }
    }

    private static double[] MovedApart(ImmutableArray<EdgeName> names, double[] ends, SKRect frame)
    {
        // Down first, so that no name touches the one above; then up from the foot of the frame.
        var middles = (double[])ends.Clone();
        for (var i = 0; i < names.Length; i++)
        {
            var least =
                i == 0
                    ? frame.Top - Overhang + (names[i].Height / 2)
                    : middles[i - 1] + ((names[i - 1].Height + names[i].Height) / 2);
            middles[i] = Math.Max(middles[i], least);
        }

        for (var i = names.Length - 1; i >= 0; i--)
        {
            var most =
                i == names.Length - 1
                    ? frame.Bottom + Overhang - (names[i].Height / 2)
                    : middles[i + 1] - ((names[i + 1].Height + names[i].Height) / 2);
            middles[i] = Math.Min(middles[i], most);
        }

        return middles;
    }
}

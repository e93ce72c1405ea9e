namespace StabilityStudy.Reporting.Model;

/// <summary>
/// A chart with linear axes. Layers are drawn in the given order, markers over everything else. Observations (<see cref="PointLayer"/> and the
/// estimates of an <see cref="IntervalLayer"/>) must lie within the axes, so that none can vanish; lines, bands and
/// interval ends are cut at the frame.
/// </summary>
internal sealed record Chart
{
    /// <summary>Creates a chart.</summary>
    /// <exception cref="ArgumentException">A coordinate is not finite, or an observation lies outside the axes.</exception>
    public Chart(string title, Axis x, Axis y, ImmutableArray<ChartLayer> layers)
    {
        foreach (var layer in layers)
        {
            if (!layer.Coordinates().All(c => double.IsFinite(c.X) && double.IsFinite(c.Y)))
            {
                throw new ArgumentException("Every coordinate is finite.", nameof(layers));
            }

            if (!layer.Observations().All(o => x.Holds(o.Position.X) && y.Holds(o.Position.Y)))
            {
                throw new ArgumentException(
                    "Every observation lies within the axes.",
                    nameof(layers)
                );
            }
        }

        Title = title;
        X = x;
        Y = y;
        Layers = layers;
    }

    /// <summary>Title above the frame; may be empty.</summary>
    public string Title { get; }

    /// <summary>Horizontal axis.</summary>
    public Axis X { get; }

    /// <summary>Vertical axis.</summary>
    public Axis Y { get; }

    /// <summary>Layers, the first one at the back.</summary>
    public ImmutableArray<ChartLayer> Layers { get; }
}

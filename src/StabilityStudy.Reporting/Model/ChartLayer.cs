using System.Runtime.InteropServices;

namespace StabilityStudy.Reporting.Model;

/// <summary>One layer of a chart. The kinds are closed.</summary>
/// <param name="Legend">Entry below the chart; null when the layer explains itself.</param>
internal abstract record ChartLayer(string? Legend)
{
    /// <summary>The name that stands beside the frame, if any.</summary>
    internal abstract LayerName? Name { get; }

    internal abstract IEnumerable<Position> Coordinates();

    /// <summary>What was observed, each with its marker: it must lie within the axes.</summary>
    internal virtual IEnumerable<(MarkerShape Marker, Position Position)> Observations() => [];
}

/// <summary>A place in a chart, in the units of its axes.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Position(double X, double Y);

/// <summary>A name beside the frame of a chart.</summary>
/// <param name="Place">On which side.</param>
/// <param name="Value">Where on the axis that runs along that side.</param>
/// <param name="Text">The name.</param>
internal sealed record LayerName(NamePlace Place, double Value, string Text);

/// <summary>A point with an optional name beside it.</summary>
internal sealed record ChartPoint(double X, double Y, string? Label = null);

/// <summary>Observations as markers.</summary>
internal sealed record PointLayer(
    ImmutableArray<ChartPoint> Points,
    MarkerShape Marker,
    string? Legend
) : ChartLayer(Legend)
{
    internal override LayerName? Name => null;

    internal override IEnumerable<Position> Coordinates() =>
        Points.Select(p => new Position(p.X, p.Y));

    internal override IEnumerable<(MarkerShape, Position)> Observations() =>
        Coordinates().Select(position => (Marker, position));
}

/// <summary>An estimate with its interval, both in the unit of the vertical axis.</summary>
internal sealed record ChartInterval(double X, double Lower, double Estimate, double Upper);

/// <summary>Estimates with vertical intervals.</summary>
internal sealed record IntervalLayer(
    ImmutableArray<ChartInterval> Intervals,
    MarkerShape Marker,
    string? Legend
) : ChartLayer(Legend)
{
    internal override LayerName? Name => null;

    internal override IEnumerable<Position> Coordinates() =>
        Intervals.SelectMany(i =>
            new[] { i.Lower, i.Estimate, i.Upper }.Select(y => new Position(i.X, y))
        );

    internal override IEnumerable<(MarkerShape, Position)> Observations() =>
        Intervals.Select(i => (Marker, new Position(i.X, i.Estimate)));
}

/// <summary>A line through positions in the given order.</summary>
/// <param name="Positions">Corners of the line.</param>
/// <param name="Dash">Dashing.</param>
/// <param name="Weight">Thickness.</param>
/// <param name="EndLabel">Name beside the frame at the end of the line, if any.</param>
internal sealed record LineLayer(
    ImmutableArray<Position> Positions,
    DashStyle Dash,
    LineWeight Weight,
    string? EndLabel,
    string? Legend
) : ChartLayer(Legend)
{
    internal override LayerName? Name =>
        EndLabel is { Length: > 0 } label && Positions is [.., var end]
            ? new(NamePlace.Edge, end.Y, label)
            : null;

    internal override IEnumerable<Position> Coordinates() => Positions;
}

/// <summary>Lower and upper end of a band at one x.</summary>
internal sealed record BandPoint(double X, double Lower, double Upper);

/// <summary>An area between two lines, points ordered by x.</summary>
internal sealed record BandLayer(ImmutableArray<BandPoint> Points, BandFill Fill, string? Legend)
    : ChartLayer(Legend)
{
    internal override LayerName? Name => null;

    internal override IEnumerable<Position> Coordinates() =>
        Points.SelectMany(p => new[] { new Position(p.X, p.Lower), new Position(p.X, p.Upper) });
}

/// <summary>A straight line across the whole frame at one value.</summary>
/// <param name="Direction">Horizontal: the value is on the vertical axis; vertical: on the horizontal axis.</param>
/// <param name="Value">Where the line stands.</param>
/// <param name="Dash">Dashing.</param>
/// <param name="Weight">Thickness.</param>
/// <param name="Label">Name beside the frame (horizontal) or at the top of the line (vertical), if any.</param>
internal sealed record ReferenceLine(
    LineDirection Direction,
    double Value,
    DashStyle Dash,
    LineWeight Weight,
    string? Label,
    string? Legend
) : ChartLayer(Legend)
{
    internal override LayerName? Name =>
        Label is { Length: > 0 } label
            ? new(
                Direction switch
                {
                    LineDirection.Horizontal => NamePlace.Edge,
                    LineDirection.Vertical => NamePlace.Top,
                },
                Value,
                label
            )
            : null;

    internal override IEnumerable<Position> Coordinates() => [new(Value, Value)];
}

/// <summary>A part of the horizontal axis with its name above the frame and a thin line at its left end, unless that is the frame.</summary>
internal sealed record NamedRange(double From, double To, string Text) : ChartLayer(Legend: null)
{
    internal override LayerName? Name =>
        Text.Length > 0 ? new(NamePlace.Top, (From + To) / 2, Text) : null;

    internal override IEnumerable<Position> Coordinates() => [];
}

/// <summary>Many thin gray lines, one a specimen.</summary>
internal sealed record TrajectoriesLayer(
    ImmutableArray<ImmutableArray<Position>> Lines,
    string? Legend
) : ChartLayer(Legend)
{
    internal override LayerName? Name => null;

    internal override IEnumerable<Position> Coordinates() => Lines.SelectMany(l => l);
}

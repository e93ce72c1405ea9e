using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace StabilityStudy.Reporting.Model;

/// <summary>One layer of a chart. The kinds are closed.</summary>
internal abstract record ChartLayer
{
    private protected ChartLayer() { }

    internal abstract IEnumerable<Position> Coordinates();

    internal virtual IEnumerable<Position> Observations() => [];
}

/// <summary>A place in a chart, in the units of its axes.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Position(double X, double Y);

/// <summary>A point with an optional name beside it.</summary>
internal sealed record ChartPoint(double X, double Y, string? Label = null);

/// <summary>Observations as markers. <paramref name="Legend"/> is null when the layer explains itself.</summary>
internal sealed record PointLayer(
    ImmutableArray<ChartPoint> Points,
    MarkerShape Marker,
    string? Legend
) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() =>
        Points.Select(p => new Position(p.X, p.Y));

    internal override IEnumerable<Position> Observations() => Coordinates();
}

/// <summary>An estimate with its interval, both in the unit of the vertical axis.</summary>
internal sealed record ChartInterval(double X, double Lower, double Estimate, double Upper);

/// <summary>Estimates with vertical intervals.</summary>
internal sealed record IntervalLayer(
    ImmutableArray<ChartInterval> Intervals,
    MarkerShape Marker,
    string? Legend
) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() =>
        Intervals.SelectMany(i =>
            new[] { i.Lower, i.Estimate, i.Upper }.Select(y => new Position(i.X, y))
        );

    internal override IEnumerable<Position> Observations() =>
        Intervals.Select(i => new Position(i.X, i.Estimate));
}

/// <summary>A line through positions in the given order.</summary>
/// <param name="Positions">Corners of the line.</param>
/// <param name="Dash">Dashing.</param>
/// <param name="Weight">Thickness.</param>
/// <param name="EndLabel">Name beside the frame at the end of the line, if any.</param>
/// <param name="Legend">Entry below the chart, if any.</param>
internal sealed record LineLayer(
    ImmutableArray<Position> Positions,
    DashStyle Dash,
    LineWeight Weight,
    string? EndLabel,
    string? Legend
) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() => Positions;
}

/// <summary>Lower and upper end of a band at one x.</summary>
internal sealed record BandPoint(double X, double Lower, double Upper);

/// <summary>An area between two lines, points ordered by x.</summary>
internal sealed record BandLayer(ImmutableArray<BandPoint> Points, BandFill Fill, string? Legend)
    : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() =>
        Points.SelectMany(p => new[] { new Position(p.X, p.Lower), new Position(p.X, p.Upper) });
}

/// <summary>A straight line across the whole frame at one value.</summary>
/// <param name="Direction">Horizontal: the value is on the vertical axis; vertical: on the horizontal axis.</param>
/// <param name="Value">Where the line stands.</param>
/// <param name="Dash">Dashing.</param>
/// <param name="Weight">Thickness.</param>
/// <param name="Label">Name beside the frame (horizontal) or at the top of the line (vertical), if any.</param>
/// <param name="Legend">Entry below the chart, if any.</param>
internal sealed record ReferenceLine(
    LineDirection Direction,
    double Value,
    DashStyle Dash,
    LineWeight Weight,
    string? Label,
    string? Legend
) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() => [new(Value, Value)];
}

/// <summary>A part of the horizontal axis with its name above the frame and a thin line at its left end, unless that is the frame.</summary>
internal sealed record NamedRange(double From, double To, string Name) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() => [];
}

/// <summary>Many thin gray lines, one a specimen.</summary>
internal sealed record TrajectoriesLayer(
    ImmutableArray<ImmutableArray<Position>> Lines,
    string? Legend
) : ChartLayer
{
    internal override IEnumerable<Position> Coordinates() => Lines.SelectMany(l => l);
}

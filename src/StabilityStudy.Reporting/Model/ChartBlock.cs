namespace StabilityStudy.Reporting.Model;

/// <summary>One figure with its caption.</summary>
/// <param name="Chart">What is drawn.</param>
/// <param name="HeightMillimeters">Height of the drawing, caption not included; above 0. A drawing is higher if its texts need it.</param>
/// <param name="AlternativeText">What the figure shows, for readers who cannot see it and for plain text.</param>
/// <param name="Caption">Caption below the figure; may be empty.</param>
internal sealed record ChartBlock(
    Chart Chart,
    double HeightMillimeters,
    string AlternativeText,
    string Caption
) : Block;

/// <summary>Figures side by side, on one page.</summary>
internal sealed record ChartRow : Block
{
    /// <summary>Creates a row of figures.</summary>
    /// <exception cref="ArgumentException">There are not two to four figures.</exception>
    public ChartRow(ImmutableArray<ChartBlock> charts)
    {
        if (charts.IsDefault || charts.Length is < 2 or > 4)
        {
            throw new ArgumentException("Two to four figures stand side by side.", nameof(charts));
        }

        Charts = charts;
    }

    /// <summary>The figures from left to right.</summary>
    public ImmutableArray<ChartBlock> Charts { get; private init; }
}

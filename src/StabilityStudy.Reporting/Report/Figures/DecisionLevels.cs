namespace StabilityStudy.Reporting.Report.Figures;

/// <summary>The decision levels as lines across a figure.</summary>
internal static class DecisionLevels
{
    /// <summary>A line at each level that the axis holds; the first explains itself in the legend.</summary>
    public static IEnumerable<ReferenceLine> Across(
        Axis axis,
        LineDirection direction,
        IEnumerable<decimal> levels,
        string? legend = "decision level"
    ) =>
        levels
            .Where(level => axis.Holds((double)level))
            .Select(
                (level, i) =>
                    new ReferenceLine(
                        direction,
                        (double)level,
                        DashStyle.Dotted,
                        LineWeight.Thin,
                        null,
                        i == 0 ? legend : null
                    )
            );
}
